// How far cutter, machine and blank yield under a force. Pure functions; compliance in mm/N.
#pragma once

#include "asperity/base/eight.h"

namespace asperity {

/// A cutter clamped at stick_out above its tip: fluted bar of flute_length, then shank.
struct CutterBeam {
  double stick_out_mm = 0;
  double flute_length_mm = 0;
  double flute_diameter_mm = 0; ///< effective bending diameter of the fluted part
  double shank_diameter_mm = 0;
  double elastic_modulus_MPa = 0;
};

/// Sideways movement at height z above the tip per newton at height zc [mm/N]; symmetric in z and zc.
/// One diameter: x^2 (3a - x)/(6EI) with a, x measured from the holder. Two diameters: exact by the unit-load
/// integral.
double cutter_compliance_mm_per_N(const CutterBeam &beam, double z_mm, double zc_mm);

/// The very same at eight heights z.
Eight cutter_compliance_mm_per_N(const CutterBeam &beam, const Eight &z_mm, double zc_mm);

/// Tip stiffness of a plain bar, 3 E I / L^3 [N/um].
double bar_stiffness_N_per_um(double diameter_mm, double length_mm, double elastic_modulus_MPa);

/// Upright blank gripped below: movement at height z above the grip per newton at height zc [mm/N], bending +
/// shear.
double blank_compliance_mm_per_N(double z_mm, double zc_mm, double second_moment_mm4, double area_mm2,
                                 double elastic_modulus_MPa);
/// The very same at eight heights z.
Eight blank_compliance_mm_per_N(const Eight &z_mm, double zc_mm, double second_moment_mm4, double area_mm2,
                                double elastic_modulus_MPa);

double machine_compliance_mm_per_N(double stiffness_N_per_um);

/// Bending stress at the holder face from a sideways force at the tip [MPa]: 32 F L/(pi d^3).
double holder_stress_MPa(double force_N, double stick_out_mm, double diameter_mm);

} // namespace asperity
