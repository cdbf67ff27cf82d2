// Will the blank break, will the hold-down slip, will the cutter break.
#include "asperity/cut/strength.h"

#include "asperity/base/units.h"

#include <algorithm>

namespace asperity {

double base_bending_stress_MPa(double force_N, double height_mm, double section_modulus_mm3,
                               double stress_concentration) {
  return stress_concentration * force_N * height_mm / section_modulus_mm3;
}

double holding_force_N(double clamp_force_N, double friction, double lift_N) {
  return friction * std::max(0.0, clamp_force_N - lift_N);
}

double bolt_preload_N(double torque_Nm, double bolt_diameter_mm, double nut_factor) {
  const double torque_Nmm = torque_Nm * 1e3;
  return torque_Nmm / (nut_factor * bolt_diameter_mm);
}

double round_second_moment_mm4(double diameter_mm) {
  const double d2 = diameter_mm * diameter_mm;
  return kPi * d2 * d2 / 64.0;
}

double round_section_modulus_mm3(double diameter_mm) {
  return kPi * diameter_mm * diameter_mm * diameter_mm / 32.0;
}

double rectangle_second_moment_mm4(double b_mm, double h_mm) { return b_mm * h_mm * h_mm * h_mm / 12.0; }

double rectangle_section_modulus_mm3(double b_mm, double h_mm) { return b_mm * h_mm * h_mm / 6.0; }

} // namespace asperity
