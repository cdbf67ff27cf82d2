// Joins the dents of neighbouring rows and levels into vertical lines on the wall.
#pragma once

#include "groove.h"

#include "asperity/chart/wall_chart.h"

namespace asperity {

/// A groove or ridge that runs up the wall.
struct GrooveLine {
  bool ridge = false;
  double centre_column = 0;        ///< with fraction
  double depth_mm = 0;             ///< deepest row
  double width_mm = 0;             ///< at the deepest row
  std::size_t column = 0, row = 0; ///< deepest cell
  std::size_t first_row = 0, last_row = 0;
  std::vector<std::size_t> cells; ///< deepest cell of each row it was seen in, from below
};

/// Lines on the wall, strongest first. `window_mm`: width of the moving median; rows below
/// `first_clean[column]` and cells not cut are left out.
std::vector<GrooveLine> groove_lines(const WallChart &chart, std::span<const std::size_t> first_clean,
                                     double window_mm, double least_mm, int threads);

} // namespace asperity
