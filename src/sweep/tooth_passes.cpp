// Shares blocks of columns, then rows, out over threads.
#include "asperity/sweep/tooth_passes.h"

#include "asperity/base/parallel.h"

#include "tooth_block.h"

#include <cassert>
#include <memory>
#include <thread>

namespace asperity {

bool lay_tooth_passes(WallChart &chart, std::span<const ToothLap> laps, int threads,
                      const Progress &progress) {
  if (laps.empty() || chart.columns() < 3)
    return !progress.cancelled();
  for ([[maybe_unused]] const ToothLap &lap : laps)
    assert(lap.turns.size() == chart.columns() && !lap.lag_mm.empty());
  const std::size_t blocks = band_count(chart.columns(), ToothBlock::kColumns);
  std::vector<std::unique_ptr<ToothBlock>> ready(blocks);
  for_each_band(blocks, 1, threads, [&](std::size_t begin, std::size_t) {
    ready[begin] = std::make_unique<ToothBlock>(chart, laps, begin * ToothBlock::kColumns);
  });

  constexpr std::size_t kRows = 8;
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(chart.rows(), kRows, threads, [&](std::size_t begin, std::size_t end) {
    std::vector<float> square(ToothBlock::kColumns);
    for (std::size_t b = 0; b < blocks && !progress.cancelled(); ++b)
      for (std::size_t row = begin; row < end; ++row)
        ready[b]->lower(chart, row, square);
    const std::size_t rows_done = done.fetch_add(end - begin) + end - begin;
    if (std::this_thread::get_id() == caller)
      progress.at("tooth marks", static_cast<double>(rows_done) / static_cast<double>(chart.rows()));
  });
  return !progress.cancelled();
}

} // namespace asperity
