// How far cutter, machine and blank yield under a force.
#include "asperity/cut/deflection.h"

#include "asperity/base/units.h"
#include "asperity/cut/strength.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace asperity {

/// Rigid polymers 0.35-0.40 [from memory]; it enters only through the shear part.
static constexpr double kPoissonRatio = 0.35;
/// Shear area of a rectangle over its area, 5/6 (Timoshenko's beam).
static constexpr double kShearAreaShare = 5.0 / 6.0;
static constexpr double kUmPerMm = 1e3;

/// Integral of u (u + apart) from 0 to u: the product of the two unit-load moments along a bar, u measured
/// from the nearer load towards the clamp.
static double moment_product_mm3(double u_mm, double apart_mm) {
  return u_mm * u_mm * (u_mm / 3.0 + apart_mm / 2.0);
}

double cutter_compliance_mm_per_N(const CutterBeam &beam, double z_mm, double zc_mm) {
  assert(beam.elastic_modulus_MPa > 0 && beam.stick_out_mm > 0);
  const double upper_mm = std::max(z_mm, zc_mm), apart_mm = std::abs(z_mm - zc_mm);
  const double to_holder_mm = beam.stick_out_mm - upper_mm;
  if (to_holder_mm <= 0)
    return 0.0;
  const double fluted_mm = std::clamp(beam.flute_length_mm - upper_mm, 0.0, to_holder_mm);
  const double fluted_part = moment_product_mm3(fluted_mm, apart_mm);
  const double shank_part = moment_product_mm3(to_holder_mm, apart_mm) - fluted_part;
  double sum_per_mm = 0;
  if (fluted_mm > 0)
    sum_per_mm += fluted_part / round_second_moment_mm4(beam.flute_diameter_mm);
  if (fluted_mm < to_holder_mm)
    sum_per_mm += shank_part / round_second_moment_mm4(beam.shank_diameter_mm);
  return sum_per_mm / beam.elastic_modulus_MPa;
}

double bar_stiffness_N_per_um(double diameter_mm, double length_mm, double elastic_modulus_MPa) {
  const double stiffness_N_per_mm =
      3.0 * elastic_modulus_MPa * round_second_moment_mm4(diameter_mm) / (length_mm * length_mm * length_mm);
  return stiffness_N_per_mm / kUmPerMm;
}

double blank_compliance_mm_per_N(double z_mm, double zc_mm, double second_moment_mm4, double area_mm2,
                                 double elastic_modulus_MPa) {
  const double lower_mm = std::max(0.0, std::min(z_mm, zc_mm));
  const double bending =
      moment_product_mm3(lower_mm, std::abs(z_mm - zc_mm)) / (elastic_modulus_MPa * second_moment_mm4);
  const double shear_modulus_MPa = elastic_modulus_MPa / (2.0 * (1.0 + kPoissonRatio));
  const double shear = lower_mm / (shear_modulus_MPa * kShearAreaShare * area_mm2);
  return bending + shear;
}

double machine_compliance_mm_per_N(double stiffness_N_per_um) {
  return 1.0 / (stiffness_N_per_um * kUmPerMm);
}

double holder_stress_MPa(double force_N, double stick_out_mm, double diameter_mm) {
  return force_N * stick_out_mm / round_section_modulus_mm3(diameter_mm);
}

} // namespace asperity
