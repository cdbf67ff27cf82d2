// What the axes allow along a curve: speed and acceleration.
#pragma once

#include "asperity/shape/curve.h"

namespace asperity {

/// Highest speed along the curve [mm/s] at which no axis passes its limit in the worst direction of the
/// curve.
double axis_speed_limit_mm_per_s(const Curve &curve, double length_mm, Vec3 axis_limit_mm_per_s);

/// Highest acceleration along the curve [mm/s^2] that keeps each axis within its limit: along a line in its
/// direction; on an arc the same in every direction of its plane, so that it holds for the centripetal part
/// too.
double axis_acceleration_limit_mm_per_s2(const Curve &curve, double length_mm, Vec3 axis_limit_mm_per_s2);

/// v = sqrt(a r) with the radius of curvature of the arc or helix; infinite on a line [mm/s].
double centripetal_limit_mm_per_s(const Curve &curve, double length_mm, double acceleration_mm_per_s2);

} // namespace asperity
