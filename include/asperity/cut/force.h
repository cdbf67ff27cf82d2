// Cutting force on the cutter: linear-edge model, helical teeth. Pure functions.
//
// Seen from above, spindle clockwise, cutter moving along +x relative to the work. Angle phi is measured
// clockwise from +y: a tooth sits at R (sin phi, cos phi) and, with the work all round, cuts for 0 < phi <
// pi. Left wall (+y side) is made at phi = 0 (conventional), right wall (-y side) at phi = pi (climb).
#pragma once

#include "asperity/base/vec.h"

#include <span>

namespace asperity {

/// dF = (k_c h + k_e) dz per tooth; t tangential, r radial, a axial [N/mm^2] and [N/mm].
struct ForceCoefficients {
  double ktc = 0, krc = 0, kac = 0;
  double kte = 0, kre = 0, kae = 0;
};

/// Immersed arc [rad], entry <= exit; equal = not in contact.
struct Immersion {
  double entry_rad = 0, exit_rad = 0;
  double span_rad() const { return exit_rad - entry_rad; }
};

/// Immersion of a straight wall cut of radial depth ae [mm] with cutter radius r [mm], 0 <= ae <= 2r.
Immersion climb_immersion(double radial_depth_mm, double radius_mm);
Immersion conventional_immersion(double radial_depth_mm, double radius_mm);

/// Force on the cutter averaged over a revolution [N]: x along feed, y to the left, z positive DOWN (pulls
/// the cutter out of the holder and lifts the work). feed_per_tooth [mm], axial depth [mm].
Vec3 mean_force_N(const ForceCoefficients &k, const Immersion &arc, int flutes, double axial_depth_mm,
                  double feed_per_tooth_mm);

/// One slice of the engaged length: [z_low, z_high] above the tip with its own immersed arc.
struct ImmersedSlice {
  double z_low_mm = 0, z_high_mm = 0;
  Immersion arc;
  double length_mm() const { return z_high_mm - z_low_mm; }
  double middle_mm() const { return 0.5 * (z_low_mm + z_high_mm); }
};

struct ToothGeometry {
  double radius_mm = 0;
  int flutes = 2;
  double helix_rad = 0; ///< right-hand positive: a higher slice lags, phi(z) = phi0 - z tan(helix)/radius
};

/// Force on the cutter at the moment tooth 0's tip stands at phi0 [N]; per slice into `slice_force_N` (same
/// length as slices) if given. Slices longer than a few degrees of helix lag are integrated exactly (closed
/// form in phi).
Vec3 force_at_N(const ForceCoefficients &k, std::span<const ImmersedSlice> slices, const ToothGeometry &teeth,
                double feed_per_tooth_mm, double phi0_rad, std::span<Vec3> slice_force_N = {});

/// Largest plan force over a revolution [N]. 36 angles of the stretch in contact, then twice closer: within 1
/// % on plain walls, up to 4 % low where every slice has another arc.
double peak_force_N(const ForceCoefficients &k, std::span<const ImmersedSlice> slices,
                    const ToothGeometry &teeth, double feed_per_tooth_mm);

/// Mean cutting torque [N mm] and power [W].
double mean_torque_Nmm(const ForceCoefficients &k, const Immersion &arc, int flutes, double axial_depth_mm,
                       double feed_per_tooth_mm, double radius_mm);
double power_W(double torque_Nmm, double spindle_rpm);

/// Kienzle specific force kc = kc11 h^-mc [N/mm^2], h in mm.
double kienzle_kc_N_per_mm2(double kc11, double mc, double chip_thickness_mm);

} // namespace asperity
