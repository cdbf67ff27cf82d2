// Places and reservations in plain words.
#include "wording.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// What rounding would print as -0.00 is 0.
double not_minus_zero(double value_mm) { return std::abs(value_mm) < 0.005 ? 0.0 : value_mm; }

} // namespace

double angle_deg(const WallFeature &wall, const WallChart &chart, std::size_t column) {
  const Vec2 d = chart.foot[column] - wall.centre;
  const double angle = deg_from_rad(std::atan2(d.y, d.x));
  // A tiny negative angle plus 360 would round to 360 itself.
  return angle < 0.0 ? std::fmod(angle + 360.0, 360.0) : angle;
}

std::string words_at(const WallFeature &wall, const WallChart &chart, std::size_t column) {
  if (wall.kind == OutlineKind::circle)
    return fmt::format("at {:.1f} deg round the wall",
                       std::fmod(std::round(angle_deg(wall, chart, column) * 10.0), 3600.0) / 10.0);
  return "at " + words_xy(chart.foot[column]);
}

std::string words_z(double low_mm, double high_mm) {
  return fmt::format("z {:.2f} to {:.2f} mm", not_minus_zero(low_mm), not_minus_zero(high_mm));
}

std::string words_xy(Vec2 p) {
  return fmt::format("x {:.1f}, y {:.1f} mm", not_minus_zero(p.x), not_minus_zero(p.y));
}

std::string words_xyz(Vec3 p) {
  return fmt::format("x {:.1f}, y {:.1f}, z {:.2f} mm", not_minus_zero(p.x), not_minus_zero(p.y),
                     not_minus_zero(p.z));
}

Vec3 place_on(const WallChart &chart, std::size_t column, double z_mm) {
  return {chart.foot[column].x, chart.foot[column].y, z_mm};
}

std::string force_rests_on(const Job &job) {
  if (job.material.calibrated)
    return "";
  return fmt::format("force coefficients of {}, +-50 % until calibrated",
                     job.material.name.empty() ? "the material" : job.material.name);
}

std::string bending_rests_on(const Job &job) {
  const Effects &effects = job.effects;
  if (!effects.cutter_bending && !effects.machine_bending && !effects.blank_bending)
    return "";
  std::string text = force_rests_on(job);
  const bool default_stiffness =
      std::any_of(job.defaults_used.begin(), job.defaults_used.end(),
                  [](const std::string &used) { return used.find("stiffness_xy") != std::string::npos; });
  if (effects.machine_bending && default_stiffness)
    text += std::string(text.empty() ? "" : "; ") + "machine stiffness is a default, not measured";
  return text;
}

} // namespace asperity
