// Arcs from their end, centre or radius, in any of the three planes.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/shape/curve.h"

#include <cstdint>
#include <optional>

namespace asperity::gcode {

enum class Plane : std::uint8_t { xy, xz, yz };

/// Axes of a plane in the order in which first x second = third: seen from the positive end of `third`, a
/// positive angle turns from `first` to `second`. In XZ that is Z before X.
struct PlaneAxes {
  int first = 0;
  int second = 1;
  int third = 2;

  Vec2 in_plane(Vec3 p) const { return {p[first], p[second]}; }
};
PlaneAxes axes_of(Plane plane);

/// Difference of the centre's distances from begin and end [mm].
double radius_mismatch_mm(Vec2 begin, Vec2 end, Vec2 centre);

/// Centre of the arc of this radius; positive: at most half a turn, negative: more. Empty when the ends lie
/// further apart than two radii and `slack_mm`, or coincide.
std::optional<Vec2> centre_from_radius(Vec2 begin, Vec2 end, double radius_mm, bool is_clockwise,
                                       double slack_mm);

/// Signed angle from begin to end about the centre, counter-clockwise positive; a whole turn when they
/// coincide.
double sweep_about(Vec2 centre, Vec2 begin, Vec2 end, bool is_clockwise);

struct ArcEnds {
  Vec3 begin{0.0};
  Vec3 end{0.0};
  Plane plane = Plane::xy;
  bool is_clockwise = false;
};
/// The arc or helix about a centre that is at the same distance from both ends but for rounding. The centre
/// is moved by that rounding so that the arc meets both ends.
Curve arc_about(const ArcEnds &ends, Vec2 centre);

} // namespace asperity::gcode
