// A slow second opinion on wall charts: every piece, dense steps, golden-section refinement.
#pragma once

#include "asperity/chart/wall_chart.h"
#include "asperity/sweep/swept_path.h"

namespace asperity::wall_test {

/// e of one cell by brute force, clamped at -band; +infinity where no pass reaches.
double reference_e_mm(const WallChart &chart, const SweptPath &path, std::size_t column, std::size_t row);

} // namespace asperity::wall_test
