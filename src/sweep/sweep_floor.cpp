// Shares a floor chart's rows of tiles out over threads and lowers each under the strokes that reach it.
#include "asperity/sweep/sweep_floor.h"

#include "asperity/base/parallel.h"

#include "floor_path.h"
#include "floor_rows.h"
#include "floor_tile.h"
#include "path_portion.h"
#include "sweep_in_portions.h"

#include <atomic>
#include <memory>
#include <thread>

namespace asperity {

namespace {

void sweep_portion(FloorChart &chart, const FloorPath &strokes, const PathPortion &portion, int threads,
                   const Progress &progress) {
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
        progress.at("floor", portion.done(double(finished) / double(rows.rows())));
    }
  });
}

} // namespace

bool sweep_in_portions(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                       const FloorPortions &portions) {
  const std::size_t pieces = path.pieces.size();
  std::size_t begin = 0;
  do {
    const FloorPath strokes = floor_path(path, begin, portions, threads);
    sweep_portion(chart, strokes, {begin, strokes.end, pieces}, threads, progress);
    begin = strokes.end;
  } while (begin < pieces && !progress.cancelled());
  return !progress.cancelled();
}

bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                 double merge_within_mm) {
  return sweep_in_portions(chart, path, threads, progress, {.merge_within_mm = merge_within_mm});
}

} // namespace asperity
