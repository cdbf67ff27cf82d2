// The speed allowed through a corner, and the rounding it leaves.
#pragma once

#include "asperity/base/vec.h"

namespace asperity {

/// Speed at a corner [mm/s] by the tangent-arc rule: v^2 = a delta s/(1-s), s = sin(theta/2), theta = pi -
/// turn. turn_rad = change of direction: 0 straight on (infinite), pi reversal (0). Source: controller
/// documentation; it is the centripetal limit v^2 = a r on the arc of corner_radius_mm.
double corner_speed_mm_per_s(double acceleration_mm_per_s2, double deviation_mm, double turn_rad);

/// The same where the arc may take no more than half the shorter leg: v^2 also <= a (d/2) tan(theta/2).
/// Source: controller documentation. On a chain of short equal chords this is the centripetal limit of their
/// inscribed circle.
double short_leg_corner_speed_mm_per_s(double acceleration_mm_per_s2, double deviation_mm, double turn_rad,
                                       double shorter_leg_mm);

/// Radius of the arc tangent to both legs that passes `deviation_mm` from the corner.
double corner_radius_mm(double deviation_mm, double turn_rad);

/// Length each leg loses to that arc.
double corner_trim_mm(double deviation_mm, double turn_rad);

/// How far from the corner the arc passes that takes `trim_mm` of each leg: the inverse of corner_trim_mm.
double corner_deviation_mm(double trim_mm, double turn_rad);

/// Angle between two directions of any length, 0..pi [rad].
double turn_between_rad(Vec3 in, Vec3 out);

} // namespace asperity
