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

std::optional<HeightGrid> grid_of(const Chart &chart, RowRange rows, int threads) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return height_grid(*wall, rows, threads);
  return height_grid(std::get<FloorChart>(chart), rows, threads);
}

std::size_t rows_of(const Chart &chart) {
  const auto *wall = std::get_if<WallChart>(&chart);
  return wall != nullptr ? wall->rows() : std::get<FloorChart>(chart).ny;
}

std::size_t window_count(double length_mm) {
  return static_cast<std::size_t>(std::max(1.0, std::round(length_mm / kWindow_mm)));
}

/// `grid`: any rows of the chart.
RaMap empty_map(const Chart &chart, const HeightGrid &grid) {
  RaMap map;
  map.closed = grid.x_ends == ProfileEnds::closed;
  const double width = grid.spacing_x_mm * static_cast<double>(grid.columns);
  const double height = grid.spacing_y_mm * static_cast<double>(rows_of(chart));
  map.columns = std::min(window_count(width), grid.columns);
  map.rows = std::min(window_count(height), rows_of(chart));
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

/// Mean deviation over the grid's cells [i0, i1) x [j0, j1); the grid begins at the chart's cell `first`.
RaWindow window_of(const HeightGrid &grid, std::size_t first, std::size_t i0, std::size_t i1, std::size_t j0,
                   std::size_t j1) {
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
        window.roughest = static_cast<std::uint32_t>(first + cell);
      }
    }
  const auto cells = static_cast<double>((i1 - i0) * (j1 - j0));
  window.ra_um = static_cast<double>(cut) >= kLeastShare * cells ? um_from_mm(sum / static_cast<double>(cut))
                                                                 : std::numeric_limits<double>::quiet_NaN();
  return window;
}

/// First row of the chart's cells in a row of windows.
std::size_t first_row(const RaMap &map, const Chart &chart, std::size_t window_row) {
  return window_row * rows_of(chart) / map.rows;
}

double mark_ra_um(const Chart &chart, MarkRa &marks, std::size_t cell) {
  return um_from_mm(std::visit([&](const auto &c) { return marks.ra_mm(c, cell); }, chart));
}

/// Rows [begin, end) of windows, from the chart's rows in reach of their filter.
void read_rows(RaMap &map, const Chart &chart, const TextureSource &source, RowRange windows, int threads) {
  const double spacing_mm = grid_of(chart, {0, 1}, 1)->spacing_y_mm;
  const std::size_t reach = mean_reach_rows(kWindow_mm, spacing_mm);
  const std::size_t low = first_row(map, chart, windows.begin), from = low - std::min(low, reach);
  const std::size_t to = first_row(map, chart, windows.end) + reach;
  const HeightGrid rough = rough_surface(*grid_of(chart, {from, to}, threads), {kWindow_mm, 0.0}, threads);
  for_each_band(windows.end - windows.begin, 1, threads, [&](std::size_t begin, std::size_t end) {
    MarkRa marks(source);
    for (std::size_t row = windows.begin + begin; row < windows.begin + end; ++row)
      for (std::size_t column = 0; column < map.columns; ++column) {
        RaWindow &window = map.windows[row * map.columns + column];
        window = window_of(rough, from * rough.columns, column * rough.columns / map.columns,
                           (column + 1) * rough.columns / map.columns, first_row(map, chart, row) - from,
                           first_row(map, chart, row + 1) - from);
        if (!std::isnan(window.ra_um))
          window.ra_um = combined_ra_um(window.ra_um, mark_ra_um(chart, marks, window.roughest));
      }
  });
}

} // namespace

RaMap ra_map(const Chart &chart, const TextureSource &source, int threads, std::size_t band_cells) {
  const std::optional<HeightGrid> grid = grid_of(chart, {0, 1}, 1);
  if (!grid)
    return {};
  RaMap map = empty_map(chart, *grid);
  const std::size_t cells_a_row = std::max<std::size_t>(1, rows_of(chart) * grid->columns / map.rows);
  const std::size_t band = std::max<std::size_t>(1, band_cells / cells_a_row);
  for (std::size_t row = 0; row < map.rows; row += band)
    read_rows(map, chart, source, {row, std::min(row + band, map.rows)}, threads);
  return map;
}

} // namespace asperity
