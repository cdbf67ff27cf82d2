// Lays out the columns and rows of an unrolled wall.
#include "asperity/chart/wall_chart.h"

#include "asperity/base/filled_list.h"
#include "cells.h"

#include <utility>

namespace asperity {

WallChart make_wall_chart(const Outline &outline, bool inside, double z_bottom_mm, double z_top_mm,
                          double spacing_mm, int threads) {
  return make_wall_chart(outline, inside, cell_middles_mm(0.0, outline.length_mm(), spacing_mm),
                         cell_middles_mm(z_bottom_mm, z_top_mm, spacing_mm), threads);
}

WallChart make_wall_chart(const Outline &outline, bool inside, std::vector<double> s_mm,
                          std::vector<double> z_mm, int threads) {
  constexpr float kUntouched = std::numeric_limits<float>::infinity();
  WallChart chart;
  chart.outline = outline;
  chart.inside = inside;
  chart.s_mm = std::move(s_mm);
  chart.z_mm = std::move(z_mm);
  chart.foot.resize(chart.columns());
  chart.normal.resize(chart.columns());
  constexpr std::size_t kColumns = 1024;
  for_each_band(chart.columns(), kColumns, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      const double s = chart.s_mm[i];
      chart.foot[i] = outline.point(s);
      chart.normal[i] = inside ? -outline.outward_normal(s) : outline.outward_normal(s);
    }
  });
  const std::size_t cells = chart.columns() * chart.rows();
  chart.envelope_mm = filled_list(cells, kUntouched, threads);
  chart.blank_mm = filled_list(cells, kUntouched, threads);
  chart.owner = filled_list(cells, kNobody, threads);
  return chart;
}

} // namespace asperity
