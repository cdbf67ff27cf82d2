// Will the blank break, will the hold-down slip, will the cutter break. Pure functions.
#pragma once

namespace asperity {

/// Bending stress at the grip [MPa] from a sideways force at height above it: kt F h / W.
double base_bending_stress_MPa(double force_N, double height_mm, double section_modulus_mm3,
                               double stress_concentration);

/// Square inside corner at the grip, [common practice, no published source].
inline constexpr double kSquareCornerConcentration = 2.0;
/// Tooth pulses and catching: peak force times this, [common practice, no published source].
inline constexpr double kImpactFactor = 2.0;
/// Wanted margin against break and slip, [common practice, no published source].
inline constexpr double kWantedMargin = 2.0;

/// Sideways force the clamps can hold by friction [N]: mu (clamp force - lifting force).
double holding_force_N(double clamp_force_N, double friction, double lift_N);

/// Preload of a bolt tightened to torque T [N]: T/(K d), K = 0.2.
double bolt_preload_N(double torque_Nm, double bolt_diameter_mm, double nut_factor = 0.2);

/// Second moment of area and section modulus: solid round bar, solid rectangle (bending across h).
double round_second_moment_mm4(double diameter_mm);
double round_section_modulus_mm3(double diameter_mm);
double rectangle_second_moment_mm4(double b_mm, double h_mm);
double rectangle_section_modulus_mm3(double b_mm, double h_mm);

} // namespace asperity
