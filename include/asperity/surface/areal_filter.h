// The Gaussian filter over a surface (ISO 16610-61): the profile filter along both axes, gaps left out.
#pragma once

#include "asperity/surface/gaussian_filter.h"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

namespace asperity {

struct FloorChart;
struct WallChart;

/// Heights on an even grid, row-major: index = row * columns + column. valid[i] == 0 marks a gap.
struct HeightGrid {
  std::size_t columns = 0, rows = 0;
  double spacing_x_mm = 0, spacing_y_mm = 0; ///< between columns, between rows
  ProfileEnds x_ends = ProfileEnds::open;    ///< closed: the last column is followed by the first
  std::vector<float> heights_mm;
  std::vector<std::uint8_t> valid;

  std::size_t at(std::size_t column, std::size_t row) const { return row * columns + column; }
};

/// Rows of a chart, end left out; as far as there are any.
struct RowRange {
  std::size_t begin = 0, end = std::numeric_limits<std::size_t>::max();
};

/// Residuals of the cells a pass has cut, the rest gaps. Nothing when the chart's columns or rows are uneven.
std::optional<HeightGrid> height_grid(const WallChart &chart, RowRange rows = {}, int threads = 1);
HeightGrid height_grid(const FloorChart &chart, RowRange rows = {}, int threads = 1);

/// Mean surface by Gaussian weights over the valid cells within +- one cutoff; gaps get the surface of their
/// neighbours, or 0 with none in reach. The result never depends on `threads` (0 = all cores).
std::vector<float> mean_surface_mm(const HeightGrid &grid, double cutoff_mm, int threads = 0);

/// How many rows to either side of a row its mean surface rests on.
std::size_t mean_reach_rows(double cutoff_mm, double spacing_y_mm);

/// Scale-limited surface: S-filtered heights minus their mean surface. Gaps stay gaps.
HeightGrid rough_surface(HeightGrid grid, const Bandwidth &band, int threads = 0);

} // namespace asperity
