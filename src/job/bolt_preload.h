// The force of a bolt tightened to a known torque.
#pragma once

namespace asperity {

/// Ratio K in T = K F d for dry steel threads, from memory, 0.15 (oiled) to 0.3 (rough).
inline constexpr double kNutFactor = 0.2;

/// F = T/(K d) [N], torque [N m], thread diameter [mm].
inline double bolt_force_N(double torque_N_m, double thread_diameter_mm, double nut_factor) {
  return torque_N_m * 1e3 / (nut_factor * thread_diameter_mm);
}

} // namespace asperity
