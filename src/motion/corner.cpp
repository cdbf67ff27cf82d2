// The tangent-arc corner rule in the half and quarter angles of the turn, which keep their digits when it is
// small.
#include "asperity/motion/corner.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kUnlimited = std::numeric_limits<double>::infinity();

} // namespace

// derived: an arc of radius r tangent to both legs passes r/s - r from the corner, s = sin(theta/2) =
// cos(turn/2), so r = deviation s/(1-s), and 1 - cos(turn/2) = 2 sin^2(turn/4).
double corner_radius_mm(double deviation_mm, double turn_rad) {
  if (turn_rad >= kPi || deviation_mm <= 0.0)
    return 0.0;
  const double quarter = std::sin(turn_rad / 4.0);
  return quarter > 0.0 ? deviation_mm * std::cos(turn_rad / 2.0) / (2.0 * quarter * quarter) : kUnlimited;
}

// derived: trim = r tan(turn/2) = deviation sin(turn/2)/(2 sin^2(turn/4)) = deviation cot(turn/4).
double corner_trim_mm(double deviation_mm, double turn_rad) {
  if (deviation_mm <= 0.0)
    return 0.0;
  const double slope = std::tan(turn_rad / 4.0);
  return slope > 0.0 ? deviation_mm / slope : kUnlimited;
}

double corner_deviation_mm(double trim_mm, double turn_rad) { return trim_mm * std::tan(turn_rad / 4.0); }

double corner_speed_mm_per_s(double acceleration_mm_per_s2, double deviation_mm, double turn_rad) {
  return std::sqrt(acceleration_mm_per_s2 * corner_radius_mm(deviation_mm, turn_rad));
}

double short_leg_corner_speed_mm_per_s(double acceleration_mm_per_s2, double deviation_mm, double turn_rad,
                                       double shorter_leg_mm) {
  // A turn of zero leaves any trim on the line, so the leg's length says nothing.
  const double widest = corner_deviation_mm(shorter_leg_mm / 2.0, turn_rad);
  return turn_rad > 0.0
             ? corner_speed_mm_per_s(acceleration_mm_per_s2, std::min(deviation_mm, widest), turn_rad)
             : kUnlimited;
}

// acos of the dot product loses half its digits near 0 and pi; this keeps them all.
double turn_between_rad(Vec3 in, Vec3 out) {
  return std::atan2(glm::length(glm::cross(in, out)), glm::dot(in, out));
}

} // namespace asperity
