// How far cutter, machine and blank yield under a force.
#include "asperity/cut/deflection.h"

#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"
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

namespace {

/// Integral of u (u + apart) from 0 to u: the product of the two unit-load moments along a bar, u measured
/// from the nearer load towards the clamp.
ASPERITY_INTO_WIDE double moment_product_mm3(double u_mm, double apart_mm) {
  return u_mm * u_mm * (u_mm / 3.0 + apart_mm / 2.0);
}

/// A cutter's beam with the second moments of its two parts.
struct TwoPartBar {
  double stick_out_mm, flute_length_mm, flute_moment_mm4, shank_moment_mm4, elastic_modulus_MPa;
};

TwoPartBar bar_of(const CutterBeam &beam) {
  assert(beam.elastic_modulus_MPa > 0 && beam.stick_out_mm > 0);
  return {beam.stick_out_mm, beam.flute_length_mm, round_second_moment_mm4(beam.flute_diameter_mm),
          round_second_moment_mm4(beam.shank_diameter_mm), beam.elastic_modulus_MPa};
}

ASPERITY_INTO_WIDE double compliance_mm_per_N(const TwoPartBar &bar, double z_mm, double zc_mm) {
  const double upper_mm = std::max(z_mm, zc_mm), apart_mm = std::abs(z_mm - zc_mm);
  const double to_holder_mm = std::max(0.0, bar.stick_out_mm - upper_mm);
  const double fluted_mm = std::min(std::max(0.0, bar.flute_length_mm - upper_mm), to_holder_mm);
  const double fluted_part = moment_product_mm3(fluted_mm, apart_mm);
  const double shank_part = moment_product_mm3(to_holder_mm, apart_mm) - fluted_part;
  // A part that is not there may have no moment either.
  const double fluted = fluted_part / bar.flute_moment_mm4, shank = shank_part / bar.shank_moment_mm4;
  const double sum_per_mm = (fluted_mm > 0 ? fluted : 0.0) + (fluted_mm < to_holder_mm ? shank : 0.0);
  return sum_per_mm / bar.elastic_modulus_MPa;
}

/// An upright blank's two ways to yield, per force.
struct UprightBar {
  double bending_N_mm2, shear_N;
};

UprightBar upright_bar(double second_moment_mm4, double area_mm2, double elastic_modulus_MPa) {
  const double shear_modulus_MPa = elastic_modulus_MPa / (2.0 * (1.0 + kPoissonRatio));
  return {elastic_modulus_MPa * second_moment_mm4, shear_modulus_MPa * kShearAreaShare * area_mm2};
}

ASPERITY_INTO_WIDE double compliance_mm_per_N(const UprightBar &bar, double z_mm, double zc_mm) {
  const double lower_mm = std::max(0.0, std::min(z_mm, zc_mm));
  return moment_product_mm3(lower_mm, std::abs(z_mm - zc_mm)) / bar.bending_N_mm2 + lower_mm / bar.shear_N;
}

ASPERITY_WIDE void fill_compliance(const TwoPartBar &bar, const Eight &z_mm, double zc_mm, Eight &filled) {
#pragma omp simd
  for (std::size_t i = 0; i < filled.size(); ++i)
    filled[i] = compliance_mm_per_N(bar, z_mm[i], zc_mm);
}

ASPERITY_WIDE void fill_compliance(const UprightBar &bar, const Eight &z_mm, double zc_mm, Eight &filled) {
#pragma omp simd
  for (std::size_t i = 0; i < filled.size(); ++i)
    filled[i] = compliance_mm_per_N(bar, z_mm[i], zc_mm);
}

} // namespace

double cutter_compliance_mm_per_N(const CutterBeam &beam, double z_mm, double zc_mm) {
  return compliance_mm_per_N(bar_of(beam), z_mm, zc_mm);
}

Eight cutter_compliance_mm_per_N(const CutterBeam &beam, const Eight &z_mm, double zc_mm) {
  Eight compliance;
  fill_compliance(bar_of(beam), z_mm, zc_mm, compliance);
  return compliance;
}

double bar_stiffness_N_per_um(double diameter_mm, double length_mm, double elastic_modulus_MPa) {
  const double stiffness_N_per_mm =
      3.0 * elastic_modulus_MPa * round_second_moment_mm4(diameter_mm) / (length_mm * length_mm * length_mm);
  return stiffness_N_per_mm / kUmPerMm;
}

double blank_compliance_mm_per_N(double z_mm, double zc_mm, double second_moment_mm4, double area_mm2,
                                 double elastic_modulus_MPa) {
  return compliance_mm_per_N(upright_bar(second_moment_mm4, area_mm2, elastic_modulus_MPa), z_mm, zc_mm);
}

Eight blank_compliance_mm_per_N(const Eight &z_mm, double zc_mm, double second_moment_mm4, double area_mm2,
                                double elastic_modulus_MPa) {
  Eight compliance;
  fill_compliance(upright_bar(second_moment_mm4, area_mm2, elastic_modulus_MPa), z_mm, zc_mm, compliance);
  return compliance;
}

double machine_compliance_mm_per_N(double stiffness_N_per_um) {
  return 1.0 / (stiffness_N_per_um * kUmPerMm);
}

double holder_stress_MPa(double force_N, double stick_out_mm, double diameter_mm) {
  return force_N * stick_out_mm / round_section_modulus_mm3(diameter_mm);
}

} // namespace asperity
