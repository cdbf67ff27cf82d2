// Shares the rows of a wall chart out over threads.
#include "asperity/sweep/sweep_wall.h"

#include "sweep_in_portions.h"
#include "sweep_wall_band.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <thread>

namespace asperity {

namespace {

/// The path ends with the portion, as walls see it: whole discs are cut at both ends of it, which the pieces
/// beyond contain too.
void sweep_portion(WallChart &chart, const WallPlan &plan, const ColumnFinder &columns,
                   const PathPortion &portion, int threads, const Progress &progress) {
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(chart.rows(), kLanes, threads, [&](std::size_t begin, std::size_t end) {
    if (progress.cancelled())
      return;
    WallBand(plan, columns, chart, begin, end).cut();
    const std::size_t rows_done = done += end - begin;
    if (std::this_thread::get_id() == caller)
      progress.at("walls", portion.done(double(rows_done) / double(chart.rows())));
  });
}

} // namespace

bool sweep_in_portions(WallChart &chart, const SweptPath &path, int threads, const Progress &progress,
                       std::size_t pieces) {
  if (chart.columns() == 0 || chart.rows() == 0 || path.pieces.empty())
    return !progress.cancelled();
  const ColumnFinder columns(chart);
  for (std::size_t begin = 0; begin < path.pieces.size() && !progress.cancelled(); begin += pieces) {
    const PathPortion portion{begin, std::min(begin + pieces, path.pieces.size()), path.pieces.size()};
    sweep_portion(chart, plan_wall(chart, path, portion, columns, threads), columns, portion, threads,
                  progress);
  }
  return !progress.cancelled();
}

bool sweep_wall(WallChart &chart, const SweptPath &path, int threads, const Progress &progress) {
  return sweep_in_portions(chart, path, threads, progress, kWallSweepPieces);
}

} // namespace asperity
