// Where an end circle went over the points of a row next to one where that is known, eight at a time.
#pragma once

#include "asperity/base/eight.h"
#include "asperity/base/vec.h"

namespace asperity {

/// The axis as its circle went over a point of a floor, on a line or an arc in plan.
struct ArcMet {
  Vec2 to_point{0.0};                 ///< from the axis; as long as the circle's radius
  Vec2 heading{0.0};                  ///< of the motion, unit
  double turn_per_mm = 0;             ///< 1 / radius of the arc, positive to the left; 0 on a line
  double before_mm = 0, after_mm = 0; ///< how far line or arc reach from there
};

/// The same at the points beside, against that one.
struct ArcsBeside {
  Eight along_mm{};  ///< of the axis, positive with the motion
  Eight angle_rad{}; ///< of the direction from the axis to the point, positive to the left
  Eight found{};     ///< 1; 0 where the axis was not on that line or arc, or the angle differs by over 0.1
};

/// At points x_mm further along x. The axis is sought on the same side of the point. Exact but for a series
/// of small angles: within 1e-12. [plane geometry]
ArcsBeside arcs_beside(const ArcMet &met, const Eight &x_mm);

} // namespace asperity
