// Lays out the cells of a surface seen from above.
#include "asperity/chart/floor_chart.h"

#include "asperity/base/filled_list.h"
#include "cells.h"

namespace asperity {

FloorChart make_floor_chart(Vec2 low_mm, Vec2 high_mm, double spacing_mm, double base_mm, int threads) {
  constexpr float kUntouched = std::numeric_limits<float>::infinity();
  FloorChart chart;
  chart.spacing_mm = spacing_mm;
  chart.base_mm = base_mm;
  chart.nx = cell_count(high_mm.x - low_mm.x, spacing_mm);
  chart.ny = cell_count(high_mm.y - low_mm.y, spacing_mm);
  // The spacing is kept; cells that do not fit stick out of the box by the same amount on both sides.
  const Vec2 reach(static_cast<double>(chart.nx - 1), static_cast<double>(chart.ny - 1));
  chart.origin_mm = 0.5 * (low_mm + high_mm) - 0.5 * spacing_mm * reach;
  const std::size_t cells = chart.nx * chart.ny;
  chart.wanted_mm = filled_list(cells, 0.0f, threads);
  chart.envelope_mm = filled_list(cells, kUntouched, threads);
  chart.blank_mm = filled_list(cells, kUntouched, threads);
  chart.owner = filled_list(cells, kNobody, threads);
  return chart;
}

} // namespace asperity
