// A chart of either kind as a plain list of cells, for finders that ask the same of walls and floors.
#include "surface_view.h"

#include "wall_reference.h"
#include "wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity {

namespace {

/// First and last column of a patch round a closed outline: what lies outside is its longest free run.
std::pair<std::size_t, std::size_t> columns_round(const Patch &patch, std::size_t columns) {
  std::vector<bool> used(columns, false);
  for (const CellRun &run : patch.runs)
    std::fill(used.begin() + run.first, used.begin() + run.last + 1, true);
  std::size_t longest = 0, first = 0;
  for (std::size_t i = 0; i < columns; ++i) {
    if (!used[i] || used[(i + columns - 1) % columns])
      continue;
    std::size_t gap = 1;
    while (!used[(i + columns - gap) % columns])
      ++gap;
    if (gap > longest) {
      longest = gap;
      first = i;
    }
  }
  if (longest == 0)
    return {0, columns - 1};
  return {first, (first + columns - longest) % columns};
}

std::string where_on_wall(const WallFeature &wall, const WallChart &chart, const Patch &patch) {
  const auto [first, last] = columns_round(patch, chart.columns());
  const std::string heights =
      words_z(row_bottom_mm(chart, patch.runs.front().row), row_top_mm(chart, patch.runs.back().row));
  if (first == 0 && last + 1 == chart.columns())
    return "all round the wall, " + heights;
  if (wall.kind == OutlineKind::circle)
    return fmt::format("from {:.1f} to {:.1f} deg round the wall, {}", angle_deg(wall, chart, first),
                       angle_deg(wall, chart, last), heights);
  return fmt::format("from {} to {}, {}", words_xy(chart.foot[first]), words_xy(chart.foot[last]), heights);
}

std::string where_on_floor(const FloorChart &chart, const Patch &patch) {
  std::size_t low_i = chart.nx, high_i = 0;
  for (const CellRun &run : patch.runs) {
    low_i = std::min<std::size_t>(low_i, run.first);
    high_i = std::max<std::size_t>(high_i, run.last);
  }
  const std::size_t low_j = patch.runs.front().row, high_j = patch.runs.back().row;
  const double half = 0.5 * chart.spacing_mm;
  return fmt::format("x {:.1f} to {:.1f}, y {:.1f} to {:.1f} mm", chart.x_mm(low_i) - half,
                     chart.x_mm(high_i) + half, chart.y_mm(low_j) - half, chart.y_mm(high_j) + half);
}

SurfaceView view_of_wall(int feature, const WallFeature &wall, const WallChart &chart) {
  SurfaceView view;
  view.feature = feature;
  view.columns = chart.columns();
  view.wraps = true;
  view.envelope_mm = &chart.envelope_mm;
  view.blank_mm = &chart.blank_mm;
  view.owner = &chart.owner;
  view.place_mm = [&chart](std::size_t cell) {
    return place_on(chart, cell % chart.columns(), chart.z_mm[cell / chart.columns()]);
  };
  view.where = [&wall, &chart](const Patch &patch) { return where_on_wall(wall, chart, patch); };
  return view;
}

SurfaceView view_of_floor(int feature, const FloorChart &chart) {
  SurfaceView view;
  view.feature = feature;
  view.columns = chart.nx;
  view.envelope_mm = &chart.envelope_mm;
  view.blank_mm = &chart.blank_mm;
  view.owner = &chart.owner;
  view.wanted_mm = &chart.wanted_mm;
  view.place_mm = [&chart](std::size_t cell) {
    return Vec3(chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx),
                chart.base_mm + chart.wanted_mm[cell]);
  };
  view.where = [&chart](const Patch &patch) { return where_on_floor(chart, patch); };
  return view;
}

} // namespace

std::vector<SurfaceView> surface_views(const Evidence &evidence) {
  std::vector<SurfaceView> views;
  for_each_wall(evidence, [&](int feature, const WallFeature &wall, const WallChart &chart) {
    views.push_back(view_of_wall(feature, wall, chart));
  });
  for_each_floor(evidence, [&](int feature, const Feature &, const FloorChart &chart) {
    views.push_back(view_of_floor(feature, chart));
  });
  return views;
}

} // namespace asperity
