// Heights that passes leave between them: closed forms.
#include "asperity/cut/scallop.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

double chord_sagitta_mm(double radius_mm, double chord_mm) {
  // r - sqrt(r^2 - c^2/4) with the difference multiplied out: full digits for the shallow arcs met here.
  const double half = std::min(std::abs(chord_mm) / 2.0, radius_mm);
  const double below = std::sqrt((radius_mm - half) * (radius_mm + half));
  return radius_mm > 0 ? half * half / (radius_mm + below) : 0.0;
}

double ball_scallop_mm(double radius_mm, double stepover_mm) {
  return chord_sagitta_mm(radius_mm, stepover_mm);
}

double ball_stepover_mm(double radius_mm, double scallop_mm) {
  const double height = std::clamp(scallop_mm, 0.0, 2.0 * radius_mm);
  return 2.0 * std::sqrt(height * (2.0 * radius_mm - height));
}

double corner_radius_scallop_mm(double diameter_mm, double corner_mm, double stepover_mm) {
  const double flat_mm = diameter_mm - 2.0 * corner_mm;
  return chord_sagitta_mm(corner_mm, std::max(0.0, stepover_mm - flat_mm));
}

double ball_slope_scallop_mm(double radius_mm, double level_pitch_mm, double slope_rad) {
  return chord_sagitta_mm(radius_mm, level_pitch_mm / std::cos(slope_rad));
}

double stair_scallop_mm(double level_pitch_mm, double slope_rad) {
  return level_pitch_mm * std::sin(slope_rad);
}

double ball_curved_scallop_mm(double radius_mm, double arc_step_mm, double rho_mm) {
  if (!std::isfinite(rho_mm) || rho_mm == 0)
    return chord_sagitta_mm(radius_mm, arc_step_mm);
  // Ball centres lie on the circle rho + r (convex) or |rho| - r (concave), half a step off the cusp's ray;
  // the cusp stands where that ray leaves the ball.
  const double half_turn = arc_step_mm / (2.0 * std::abs(rho_mm));
  const double centre_mm = rho_mm > 0 ? rho_mm + radius_mm : std::max(0.0, -rho_mm - radius_mm);
  const double aside_mm = std::min(centre_mm * std::sin(half_turn), radius_mm);
  const double drop_mm = 2.0 * centre_mm * std::pow(std::sin(half_turn / 2.0), 2);
  const double sagitta_mm = chord_sagitta_mm(radius_mm, 2.0 * aside_mm);
  return rho_mm > 0 ? sagitta_mm - drop_mm : sagitta_mm + drop_mm;
}

double corner_radius_up_slope_scallop_mm(double diameter_mm, double corner_mm, double stepover_mm,
                                         double slope_rad) {
  // Seen along the feed the corner's centre circle is an ellipse a by a sin(slope); the swept hollow is that
  // ellipse offset by the corner radius. u is the ellipse's angle from its lowest point.
  const double a = diameter_mm / 2.0 - corner_mm;
  const double b = a * std::abs(std::sin(slope_rad));
  constexpr double kLevel_mm = 1e-9;
  if (b < kLevel_mm)
    return corner_radius_scallop_mm(diameter_mm, corner_mm, stepover_mm);
  const double half_step = std::min(stepover_mm / 2.0, diameter_mm / 2.0);
  const auto normal_length = [&](double u) { return std::hypot(b * std::sin(u), a * std::cos(u)); };
  const auto aside = [&](double u) { return std::sin(u) * (a + corner_mm * b / normal_length(u)); };

  // The point half a step aside: `aside` grows with u, so halve the bracket until doubles run out.
  double low = 0, high = kPi / 2.0;
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (low + high) / 2.0;
    if (aside(middle) < half_step)
      low = middle;
    else
      high = middle;
  }
  const double u = (low + high) / 2.0;
  return b + corner_mm - std::cos(u) * (b + corner_mm * a / normal_length(u));
}

double witness_width_mm(double diameter_mm, double depth_mm) {
  const double depth = std::clamp(depth_mm, 0.0, diameter_mm);
  return 2.0 * std::sqrt(depth * (diameter_mm - depth));
}

} // namespace asperity
