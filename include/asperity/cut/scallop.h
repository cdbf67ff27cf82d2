// Heights that passes leave between them: closed forms. Pure functions, mm.
#pragma once

namespace asperity {

/// Ball on a plane: r - sqrt(r^2 - s^2/4); s >= 2r leaves r.
double ball_scallop_mm(double radius_mm, double stepover_mm);
/// Stepover that leaves height h: 2 sqrt(h (2r - h)).
double ball_stepover_mm(double radius_mm, double scallop_mm);
/// Corner-radius cutter on a flat floor: 0 while s <= d - 2 rc.
double corner_radius_scallop_mm(double diameter_mm, double corner_mm, double stepover_mm);
/// Ball on a slope, pitch measured level across the slope: height along the normal; vertical = / cos(slope).
double ball_slope_scallop_mm(double radius_mm, double level_pitch_mm, double slope_rad);
/// Sharp flat cutter stepping a slope: normal height p sin(slope).
double stair_scallop_mm(double level_pitch_mm, double slope_rad);
/// Ball on a convex (rho > 0) or concave (rho < 0) cylinder, s = arc step on the surface.
double ball_curved_scallop_mm(double radius_mm, double arc_step_mm, double rho_mm);
/// Corner-radius cutter feeding up a slope, passes s apart: exact, by the offset of an ellipse.
double corner_radius_up_slope_scallop_mm(double diameter_mm, double corner_mm, double stepover_mm,
                                         double slope_rad);
/// Sagitta of a chord of length c on a circle of radius r.
double chord_sagitta_mm(double radius_mm, double chord_mm);
/// Width of the groove a standing cutter of diameter d leaves when depth deeper than the wall: 2 sqrt(d x
/// depth - depth^2).
double witness_width_mm(double diameter_mm, double depth_mm);

} // namespace asperity
