// Which grid points a carving stroke reaches, and what it leaves of them.
#pragma once

#include "asperity/cut/stock.h"

#include <optional>
#include <vector>

namespace asperity {

/// Points of a row are taken so many at a time; a grid that is carved has this much room behind its end.
inline constexpr int kCarvedAtOnce = 8;

/// Grid points of one row; inclusive, empty if first > last.
struct RowPart {
  int first = 0, last = -1;
};

/// The grid points within reach of the way from a to a + ab, row by row.
struct Swath {
  int first_row = 0;
  std::vector<RowPart> rows;
};

/// With `behind_mm` only those less than so far behind a. Into `swath`, whose memory is kept.
void find_swath(const Stock::Grid &grid, Vec2 a, Vec2 ab, double reach_mm, std::optional<double> behind_mm,
                Swath &swath);

/// What a stroke takes out of one layer.
struct Capsule {
  Vec2 begin_mm{0.0}; ///< from the stroke's begin to grid point (0, 0)
  Vec2 ab_mm{0.0};
  double radius_mm = 0;
};

/// Lowers the layer's depths in the swath to those left of the capsule. In float, counted from the stroke's
/// begin: off by less than a ten-millionth of stroke and cutter. Points that are no higher than deep_mm may
/// stay as they are.
void carve_rows(float *layer, const Stock::Grid &grid, const Swath &swath, const Capsule &capsule,
                float deep_mm);

/// Lowers the stock's upper surface in the swath to the cutter's lower one.
void lower_surface(float *surface_mm, const Stock::Grid &grid, const Swath &swath, const Stock::Stroke &from,
                   const Stock::Stroke &to, const CutterProfile &profile);

} // namespace asperity
