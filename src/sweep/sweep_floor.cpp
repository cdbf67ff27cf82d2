// Shares a floor chart's rows of tiles out over threads and lowers each under the strokes that reach it.
#include "asperity/sweep/sweep_floor.h"

#include "asperity/base/parallel.h"

#include "floor_path.h"
#include "floor_rows.h"
#include "floor_tile.h"

#include <atomic>
#include <memory>
#include <thread>

namespace asperity {

bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                 double merge_within_mm) {
  const FloorPath strokes = floor_path(path, merge_within_mm, threads);
  const FloorRows rows(chart, strokes, FloorTile::kSide, threads);
  std::atomic<std::size_t> done{0};
  const std::thread::id caller = std::this_thread::get_id();
  // A row of tiles a band: threads write far apart, and bits cannot depend on who does which.
  for_each_band(rows.rows(), 1, threads, [&](std::size_t begin, std::size_t end) {
    FloorRowLists lists(rows);
    const auto tile = std::make_unique<FloorTile>(chart, strokes);
    for (std::size_t row = begin; row < end && !progress.cancelled(); ++row) {
      lists.find(row);
      for (std::size_t i = 0; i < lists.tiles() && !progress.cancelled(); ++i)
        if (!lists.strokes(i).empty())
          tile->cut(i * FloorTile::kSide, row * FloorTile::kSide, lists.strokes(i));
      const std::size_t finished = done.fetch_add(1) + 1;
      if (std::this_thread::get_id() == caller)
        progress.at("floor", double(finished) / double(rows.rows()));
    }
  });
  return !progress.cancelled();
}

} // namespace asperity
