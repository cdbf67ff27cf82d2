// The trapezoid of speed over one piece: how far and how long it rises, holds and falls.
#pragma once

#include "asperity/motion/timed_path.h"

namespace asperity {

/// Highest (or lowest) speed reachable from v within a distance at steady acceleration: v2^2 = v1^2 + 2 a d.
double speed_after_mm_per_s(double speed_mm_per_s, double acceleration_mm_per_s2, double distance_mm);

/// Peak of a piece too short to cruise: v^2 = a d + (v1^2 + v2^2)/2.
double triangle_peak_mm_per_s(double acceleration_mm_per_s2, double distance_mm, double v_in_mm_per_s,
                              double v_out_mm_per_s);

/// Distance over which the speed changes between the two: |v2^2 - v1^2|/(2 a) [mm].
double change_distance_mm(double from_mm_per_s, double to_mm_per_s, double acceleration_mm_per_s2);

/// Time the piece takes by its speeds, acceleration and length [s].
double profile_duration_s(const PathPiece &piece);

} // namespace asperity
