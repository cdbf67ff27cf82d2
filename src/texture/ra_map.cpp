// Filters a chart, averages it over windows, adds the marks.
#include "ra_map.h"

#include "mark_ra.h"

#include "asperity/base/parallel.h"
#include "asperity/base/units.h"
#include "asperity/surface/areal_filter.h"
#include "asperity/surface/material_band.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kLeastShare = 0.25; ///< of a window that must be cut

std::optional<HeightGrid> grid_of(const Chart &chart) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return height_grid(*wall);
  return height_grid(std::get<FloorChart>(chart));
}

std::size_t window_count(double length_mm) {
  return static_cast<std::size_t>(std::max(1.0, std::round(length_mm / kWindow_mm)));
}

RaMap empty_map(const Chart &chart, const HeightGrid &grid) {
  RaMap map;
  map.closed = grid.x_ends == ProfileEnds::closed;
  const double width = grid.spacing_x_mm * static_cast<double>(grid.columns);
  const double height = grid.spacing_y_mm * static_cast<double>(grid.rows);
  map.columns = std::min(window_count(width), grid.columns);
  map.rows = std::min(window_count(height), grid.rows);
  map.side_x_mm = width / static_cast<double>(map.columns);
  map.side_y_mm = height / static_cast<double>(map.rows);
  const auto *wall = std::get_if<WallChart>(&chart);
  const Vec2 first =
      wall != nullptr ? Vec2(wall->s_mm.front(), wall->z_mm.front()) : std::get<FloorChart>(chart).origin_mm;
  map.begin_x_mm = first.x - 0.5 * grid.spacing_x_mm;
  map.begin_y_mm = first.y - 0.5 * grid.spacing_y_mm;
  map.windows.resize(map.columns * map.rows);
  return map;
}

/// Mean deviation over the grid's cells [i0, i1) x [j0, j1).
RaWindow window_of(const HeightGrid &grid, std::size_t i0, std::size_t i1, std::size_t j0, std::size_t j1) {
  RaWindow window;
  double sum = 0, most = -1;
  std::size_t cut = 0;
  for (std::size_t j = j0; j < j1; ++j)
    for (std::size_t i = i0; i < i1; ++i) {
      const std::size_t cell = grid.at(i, j);
      if (!grid.valid[cell])
        continue;
      const double z = std::abs(static_cast<double>(grid.heights_mm[cell]));
      ++cut;
      sum += z;
      if (z > most) {
        most = z;
        window.roughest = static_cast<std::uint32_t>(cell);
      }
    }
  const auto cells = static_cast<double>((i1 - i0) * (j1 - j0));
  window.ra_um = static_cast<double>(cut) >= kLeastShare * cells ? um_from_mm(sum / static_cast<double>(cut))
                                                                 : std::numeric_limits<double>::quiet_NaN();
  return window;
}

double mark_ra_um(const Chart &chart, MarkRa &marks, std::size_t cell) {
  return um_from_mm(std::visit([&](const auto &c) { return marks.ra_mm(c, cell); }, chart));
}

} // namespace

RaMap ra_map(const Chart &chart, const TextureSource &source, int threads) {
  const std::optional<HeightGrid> grid = grid_of(chart);
  if (!grid)
    return {};
  const HeightGrid rough = rough_surface(*grid, {kWindow_mm, 0.0}, threads);
  RaMap map = empty_map(chart, *grid);
  for_each_band(map.rows, 1, threads, [&](std::size_t begin, std::size_t end) {
    MarkRa marks(source);
    for (std::size_t row = begin; row < end; ++row)
      for (std::size_t column = 0; column < map.columns; ++column) {
        RaWindow &window = map.windows[row * map.columns + column];
        window =
            window_of(rough, column * grid->columns / map.columns, (column + 1) * grid->columns / map.columns,
                      row * grid->rows / map.rows, (row + 1) * grid->rows / map.rows);
        if (!std::isnan(window.ra_um))
          window.ra_um = combined_ra_um(window.ra_um, mark_ra_um(chart, marks, window.roughest));
      }
  });
  return map;
}

} // namespace asperity
