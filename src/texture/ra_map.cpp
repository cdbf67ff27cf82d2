// Filters a chart, block by block, averages it over windows, adds the marks.
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

std::optional<GridShape> shape_of(const Chart &chart) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return grid_shape(*wall);
  return grid_shape(std::get<FloorChart>(chart));
}

std::size_t window_count(double length_mm) {
  return static_cast<std::size_t>(std::max(1.0, std::round(length_mm / kWindow_mm)));
}

RaMap empty_map(const Chart &chart, const GridShape &grid) {
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

struct Extent {
  std::size_t columns = 0, rows = 0;
};

/// Items are shared out evenly among parts: those of a block of parts.
CellBlock items_of(const CellBlock &block, const Extent &parts, const Extent &items) {
  CellBlock of{block.column * items.columns / parts.columns, 0, block.row * items.rows / parts.rows, 0};
  of.columns = (block.column + block.columns) * items.columns / parts.columns - of.column;
  of.rows = (block.row + block.rows) * items.rows / parts.rows - of.row;
  return of;
}

/// Mean deviation over some of the chart's cells, which lie in the block that `rough` and its margin hold.
RaWindow window_of(const HeightGrid &rough, std::size_t margin, const CellBlock &block,
                   const CellBlock &cells, std::size_t chart_columns) {
  RaWindow window;
  double sum = 0, most = -1;
  std::size_t cut = 0;
  for (std::size_t j = cells.row; j < cells.row + cells.rows; ++j)
    for (std::size_t i = cells.column; i < cells.column + cells.columns; ++i) {
      const std::size_t at = rough.at(i - block.column + margin, j - block.row + margin);
      if (!rough.valid[at])
        continue;
      const double z = std::abs(static_cast<double>(rough.heights_mm[at]));
      ++cut;
      sum += z;
      if (z > most) {
        most = z;
        window.roughest = static_cast<std::uint32_t>(j * chart_columns + i);
      }
    }
  const auto count = static_cast<double>(cells.columns * cells.rows);
  window.ra_um = static_cast<double>(cut) >= kLeastShare * count ? um_from_mm(sum / static_cast<double>(cut))
                                                                 : std::numeric_limits<double>::quiet_NaN();
  return window;
}

double mark_ra_um(const Chart &chart, MarkRa &marks, std::size_t cell) {
  return um_from_mm(std::visit([&](const auto &c) { return marks.ra_mm(c, cell); }, chart));
}

class BlockReader {
public:
  BlockReader(RaMap &map, const Chart &chart, const GridShape &grid, const TextureSource &source)
      : map_(map), chart_(chart), grid_(grid), margin_(mean_reach_cells(kWindow_mm, grid)), marks_(source) {}

  /// Columns and rows of the map.
  void read(const CellBlock &windows) {
    const CellBlock block = cells_of(windows);
    HeightGrid heights = std::visit([&](const auto &c) { return height_grid(c, block, margin_); }, chart_);
    const HeightGrid rough = rough_surface(std::move(heights), {kWindow_mm, 0.0}, 1);
    for (std::size_t row = windows.row; row < windows.row + windows.rows; ++row)
      for (std::size_t column = windows.column; column < windows.column + windows.columns; ++column) {
        RaWindow &window = map_.windows[row * map_.columns + column];
        window = window_of(rough, margin_, block, cells_of({column, 1, row, 1}), grid_.columns);
        if (!std::isnan(window.ra_um))
          window.ra_um = combined_ra_um(window.ra_um, mark_ra_um(chart_, marks_, window.roughest));
      }
  }

private:
  CellBlock cells_of(const CellBlock &windows) const {
    return items_of(windows, {map_.columns, map_.rows}, {grid_.columns, grid_.rows});
  }

  RaMap &map_;
  const Chart &chart_;
  const GridShape &grid_;
  std::size_t margin_;
  MarkRa marks_;
};

/// Blocks along an axis of so many windows and cells.
std::size_t blocks_along(std::size_t windows, std::size_t cells, std::size_t block_cells) {
  const std::size_t most = std::max<std::size_t>(1, windows / kRaLeastWindows);
  return std::clamp<std::size_t>((cells + block_cells / 2) / block_cells, 1, most);
}

} // namespace

RaMap ra_map(const Chart &chart, const TextureSource &source, int threads, std::size_t block_cells) {
  const std::optional<GridShape> grid = shape_of(chart);
  if (!grid)
    return {};
  RaMap map = empty_map(chart, *grid);
  const Extent blocks{blocks_along(map.columns, grid->columns, block_cells),
                      blocks_along(map.rows, grid->rows, block_cells)};
  for_each_band(blocks.columns * blocks.rows, 1, threads, [&](std::size_t begin, std::size_t end) {
    BlockReader reader(map, chart, *grid, source);
    for (std::size_t block = begin; block < end; ++block)
      reader.read(
          items_of({block % blocks.columns, 1, block / blocks.columns, 1}, blocks, {map.columns, map.rows}));
  });
  return map;
}

double ra_map_bytes(double cells, double spacing_mm) {
  // Heights and which of them count, weights, and the mean of each.
  constexpr double kBytesPerCell = 17.0;
  // A block is half as long again as meant, or has nearly twice the least windows.
  const double window = kWindow_mm / spacing_mm + 1.0;
  const double side =
      std::max(1.5 * static_cast<double>(kRaBlockCells), 2.0 * static_cast<double>(kRaLeastWindows) * window);
  const double margins = 2.0 * window, whole = std::sqrt(cells);
  return kBytesPerCell * (std::min(side, whole) + margins) * (std::min(side, whole) + margins);
}

} // namespace asperity
