// The speed allowed through a corner, and the rounding it leaves.
#pragma once

namespace asperity {

/// Speed at a corner [mm/s] by the tangent-arc rule: v^2 = a delta s/(1-s), s = sin(theta/2), theta = pi - turn.
/// turn_rad = change of direction: 0 straight on (infinite), pi reversal (0).
double corner_speed_mm_per_s(double acceleration_mm_per_s2, double deviation_mm, double turn_rad);

/// Radius of the arc tangent to both legs that passes `deviation_mm` from the corner.
double corner_radius_mm(double deviation_mm, double turn_rad);

/// Length each leg loses to that arc.
double corner_trim_mm(double deviation_mm, double turn_rad);

} // namespace asperity
