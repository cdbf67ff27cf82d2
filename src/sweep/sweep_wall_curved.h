// Neighbouring rows side by side under a stroke whose discs run along an arc, or bend aside as they rise.
#pragma once

#include "sweep_wall_lanes.h"
#include "sweep_wall_ray.h"

namespace asperity {

/// Discs of one radius, one in each row: centres run along from + u·along + u²·bend, on arcs with the arm
/// from the arc's centre to its point besides.
struct LaneCurves {
  Lanes x_mm, y_mm, along_x_mm, along_y_mm, bend_x_mm, bend_y_mm;
  Lanes most_mm; ///< entries above this are left out; -infinity: cuts nothing
  Vec2 middle{0.0};
  double arm_mm = 0, half_sweep_rad = 0;
  double radius_mm = 0;
  std::size_t count = kLanes; ///< lanes in use, the first
};

/// Places the discs of a stroke at rows of these heights above the tip where it begins; heights rise.
void place_curves(const Stroke &stroke, const WallCutter &cutter, WallSide side, const Lanes &begin_height_mm,
                  LaneCurves &curves);

/// Lanes by bits.
using LaneBits = std::uint32_t;

/// Lowers a column by Newton steps from u_near to where each disc enters its ray lowest. The discs' contacts
/// must face the ray all along, and no far side may count. Returns the lanes that did not settle; these are
/// left alone.
LaneBits lower_under_curves(const LaneCurves &curves, const WallChart &chart, std::size_t column,
                            double u_near, StrokeOwners owners, LaneCells &cells);

} // namespace asperity
