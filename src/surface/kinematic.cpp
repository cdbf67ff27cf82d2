// Closed forms of tooth and pass marks.
#include "asperity/surface/kinematic.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace asperity {

namespace {

constexpr double kSqrt3 = std::numbers::sqrt3;
/// Ra and Rq of parabolic cusps of height 1.
constexpr double kCuspRa = 4.0 / (9.0 * kSqrt3);
const double kCuspRq = 2.0 / (3.0 * std::sqrt(5.0));

/// Advance a radian of turn, signed: conventional stretches the mark, climb shortens it [mm].
double advance_mm(const SideCut &cut) {
  const double advance = cut.flutes * cut.feed_per_tooth_mm / (2.0 * kPi);
  return cut.is_climb ? -advance : advance;
}

} // namespace

double parabola_cusp_mm(double radius_mm, double pitch_mm) { return pitch_mm * pitch_mm / (8.0 * radius_mm); }

double martellotti_cusp_mm(const SideCut &cut) {
  return parabola_cusp_mm(cut.radius_mm + 2.0 * advance_mm(cut), cut.feed_per_tooth_mm);
}

double trochoid_cusp_mm(const SideCut &cut) {
  // Newton from the small-angle root; the left side rises with q, so a few steps settle all digits.
  const double radius = cut.radius_mm, advance = advance_mm(cut), half = cut.feed_per_tooth_mm / 2.0;
  double q = half / (radius + advance);
  for (int step = 0; step < 20; ++step)
    q -= (radius * std::sin(q) + advance * q - half) / (radius * std::cos(q) + advance);
  const double sine = std::sin(q / 2.0);
  return 2.0 * radius * sine * sine;
}

double trochoid_radius_mm(const SideCut &cut) {
  const double reach = cut.radius_mm + advance_mm(cut);
  return reach * reach / cut.radius_mm;
}

double two_tooth_cusp_mm(double equal_cusp_mm, double shorter_mm) {
  if (equal_cusp_mm <= 0)
    return 0.0;
  const double lag = std::min(std::abs(shorter_mm), 4.0 * equal_cusp_mm);
  const double factor = 1.0 + lag / (4.0 * equal_cusp_mm);
  return equal_cusp_mm * factor * factor;
}

double single_tooth_cusp_mm(double equal_cusp_mm, int flutes) { return equal_cusp_mm * flutes * flutes; }

double dish_cusp_mm(double feed_mm, double dish_rad) { return feed_mm * std::tan(dish_rad); }

double cusp_ra_mm(double cusp_mm) { return kCuspRa * cusp_mm; }
double cusp_rq_mm(double cusp_mm) { return kCuspRq * cusp_mm; }

double rounded_tool_ra_mm(double radius_mm, double feed_mm) {
  return feed_mm * feed_mm / (18.0 * kSqrt3 * radius_mm);
}

double shop_ra_mm(double radius_mm, double feed_mm) { return feed_mm * feed_mm / (32.0 * radius_mm); }

} // namespace asperity
