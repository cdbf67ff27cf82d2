// How steep the wanted surface of a floor chart is.
#pragma once

#include "asperity/chart/floor_chart.h"

#include <cmath>

namespace asperity {

/// Slope of wanted height along one axis; `step` is 1 (x) or nx (y). One-sided at the edge of the feature.
inline double wanted_slope(const FloorChart &chart, std::size_t cell, std::size_t step, bool has_low,
                           bool has_high) {
  const bool low = has_low && chart.in_feature(cell - step), high = has_high && chart.in_feature(cell + step);
  const double here = chart.wanted_mm[cell];
  const double before = low ? double(chart.wanted_mm[cell - step]) : here;
  const double after = high ? double(chart.wanted_mm[cell + step]) : here;
  const int spans = int(low) + int(high);
  return spans == 0 ? 0.0 : (after - before) / (spans * chart.spacing_mm);
}

/// Cosine of the wanted surface's slope at cell (i, j): turns a height error into one along the normal.
inline double cos_slope(const FloorChart &chart, std::size_t i, std::size_t j) {
  const std::size_t cell = chart.at(i, j);
  const double gx = wanted_slope(chart, cell, 1, i > 0, i + 1 < chart.nx);
  const double gy = wanted_slope(chart, cell, chart.nx, j > 0, j + 1 < chart.ny);
  return 1.0 / std::sqrt(1.0 + gx * gx + gy * gy);
}

} // namespace asperity
