// Feed per tooth, chip thickness, chip thinning, rubbing. Pure functions.
#pragma once

namespace asperity {

/// 0 when the spindle stands.
double feed_per_tooth_mm(double feed_mm_per_s, double spindle_rpm, int flutes);
/// Thickest chip for radial depth ae: f sin(phi) at the outer end of the arc; f itself from half immersion
/// on.
double thickest_chip_mm(double feed_per_tooth_mm, double radial_depth_mm, double radius_mm);
/// Mean chip thickness over an arc, f (cos entry - cos exit)/(exit - entry).
double mean_chip_mm(double feed_per_tooth_mm, double entry_rad, double exit_rad);
/// Below this chip the edge rubs: lambda r_edge, lambda = 0.3.
double least_chip_mm(double edge_radius_um);

/// Wall cusp height [mm] of pitch p cut by radius r: r - sqrt(r^2 - p^2/4).
double cusp_height_mm(double pitch_mm, double radius_mm);

} // namespace asperity
