// Shares the rows of a wall chart out over threads.
#include "asperity/sweep/sweep_wall.h"

#include "sweep_wall_row.h"

#include "asperity/base/parallel.h"

#include <thread>

namespace asperity {

bool sweep_wall(WallChart &chart, const SweptPath &path, int threads, const Progress &progress) {
  if (chart.columns() == 0 || chart.rows() == 0 || path.pieces.empty())
    return !progress.cancelled();
  const WallPlan plan = plan_wall(chart, path);
  const ColumnFinder columns(chart);
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(chart.rows(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t row = begin; row < end && !progress.cancelled(); ++row) {
      WallRow(plan, columns, chart, row).cut();
      const std::size_t rows_done = ++done;
      if (std::this_thread::get_id() == caller)
        progress.at("walls", static_cast<double>(rows_done) / static_cast<double>(chart.rows()));
    }
  });
  return !progress.cancelled();
}

} // namespace asperity
