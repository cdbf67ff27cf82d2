// The unit system inside the engine (mm, s, N, rad, degC) and the only conversions to and from it.
#pragma once

#include <numbers>

namespace asperity {

inline constexpr double kPi = std::numbers::pi;

constexpr double mm_from_inch(double inch) { return inch * 25.4; }
constexpr double um_from_mm(double mm) { return mm * 1e3; }
constexpr double mm_from_um(double um) { return um * 1e-3; }
constexpr double mm_per_s_from_mm_per_min(double v) { return v / 60.0; }
constexpr double mm_per_min_from_mm_per_s(double v) { return v * 60.0; }
constexpr double rad_from_deg(double deg) { return deg * kPi / 180.0; }
constexpr double deg_from_rad(double rad) { return rad * 180.0 / kPi; }
constexpr double rev_per_s_from_rpm(double rpm) { return rpm / 60.0; }

} // namespace asperity
