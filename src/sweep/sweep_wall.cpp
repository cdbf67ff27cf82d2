// Shares the rows of a wall chart out over threads.
#include "asperity/sweep/sweep_wall.h"

#include "sweep_wall_band.h"

#include "asperity/base/parallel.h"

#include <thread>

namespace asperity {

bool sweep_wall(WallChart &chart, const SweptPath &path, int threads, const Progress &progress) {
  if (chart.columns() == 0 || chart.rows() == 0 || path.pieces.empty())
    return !progress.cancelled();
  const ColumnFinder columns(chart);
  const WallPlan plan = plan_wall(chart, path, columns);
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(chart.rows(), kLanes, threads, [&](std::size_t begin, std::size_t end) {
    if (progress.cancelled())
      return;
    WallBand(plan, columns, chart, begin, end).cut();
    const std::size_t rows_done = done += end - begin;
    if (std::this_thread::get_id() == caller)
      progress.at("walls", static_cast<double>(rows_done) / static_cast<double>(chart.rows()));
  });
  return !progress.cancelled();
}

} // namespace asperity
