// The Gaussian filter over a surface (ISO 16610-61): the profile filter along both axes, gaps left out.
#pragma once

#include "asperity/surface/gaussian_filter.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace asperity {

struct FloorChart;
struct WallChart;

/// An even grid.
struct GridShape {
  std::size_t columns = 0, rows = 0;
  double spacing_x_mm = 0, spacing_y_mm = 0; ///< between columns, between rows
  ProfileEnds x_ends = ProfileEnds::open;    ///< closed: the last column is followed by the first
};

/// Heights on such a grid, row-major: index = row * columns + column. valid[i] == 0 marks a gap.
struct HeightGrid : GridShape {
  std::vector<float> heights_mm;
  std::vector<std::uint8_t> valid;

  std::size_t at(std::size_t column, std::size_t row) const { return row * columns + column; }
};

/// Of a chart's cells. Nothing when its columns or rows are uneven.
std::optional<GridShape> grid_shape(const WallChart &chart);
GridShape grid_shape(const FloorChart &chart);

/// Residuals of the cells a pass has cut, the rest gaps. Nothing when the chart's columns or rows are uneven.
std::optional<HeightGrid> height_grid(const WallChart &chart, int threads = 1);
HeightGrid height_grid(const FloorChart &chart, int threads = 1);

/// Some columns and rows of a chart.
struct CellBlock {
  std::size_t column = 0, columns = 0, row = 0, rows = 0;
};

/// A block of an even chart, with open ends, and so many cells more all round it: on a closed chart past its
/// seam, beyond open ends gaps.
HeightGrid height_grid(const WallChart &chart, const CellBlock &block, std::size_t margin_cells);
HeightGrid height_grid(const FloorChart &chart, const CellBlock &block, std::size_t margin_cells);

/// Mean surface by Gaussian weights over the valid cells within +- one cutoff; gaps get the surface of their
/// neighbours, or 0 with none in reach. The result never depends on `threads` (0 = all cores).
std::vector<float> mean_surface_mm(const HeightGrid &grid, double cutoff_mm, int threads = 0);

/// How many cells to either side of a cell its mean surface rests on: with such a margin a block has the mean
/// surface of the whole, bit for bit.
std::size_t mean_reach_cells(double cutoff_mm, const GridShape &grid);

/// Scale-limited surface: S-filtered heights minus their mean surface. Gaps stay gaps.
HeightGrid rough_surface(HeightGrid grid, const Bandwidth &band, int threads = 0);

} // namespace asperity
