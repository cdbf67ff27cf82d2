// Nearest points on lines, arcs and other curves; time from the speed profile.
#include "curve_place.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double line_share(Vec2 begin, Vec2 end, Vec2 p) {
  const Vec2 along = end - begin;
  const double square = glm::dot(along, along);
  return square > 0 ? std::clamp(glm::dot(p - begin, along) / square, 0.0, 1.0) : 0.0;
}

double plan_arc_share(const Curve &arc, Vec2 p) {
  const Vec2 spoke = p - plan(arc.centre);
  const double angle = std::atan2(glm::dot(spoke, plan(arc.axis_y)), glm::dot(spoke, plan(arc.axis_x)));
  // Counted from the arc's middle, so that both ends are reached without a jump.
  const double middle = arc.start_rad + arc.sweep_rad / 2.0;
  const double from_middle = std::remainder(angle - middle, 2.0 * kPi);
  return std::clamp(0.5 + from_middle / arc.sweep_rad, 0.0, 1.0);
}

/// Any other curve: the nearest of a row of points, then the golden section about it.
double searched_share(const Curve &curve, Vec2 p) {
  constexpr int kPoints = 16, kRounds = 30;
  constexpr double kGolden = 0.6180339887498949;
  const auto distance = [&](double u) { return glm::distance(plan(curve.point(u)), p); };
  int best = 0;
  for (int i = 1; i <= kPoints; ++i)
    if (distance(double(i) / kPoints) < distance(double(best) / kPoints))
      best = i;
  double low = std::max(0.0, (best - 1.0) / kPoints), high = std::min(1.0, (best + 1.0) / kPoints);
  for (int round = 0; round < kRounds; ++round) {
    const double a = high - kGolden * (high - low), b = low + kGolden * (high - low);
    (distance(a) < distance(b) ? high : low) = distance(a) < distance(b) ? b : a;
  }
  return (low + high) / 2.0;
}

} // namespace

double nearest_share(const Curve &curve, Vec2 p) {
  if (curve.is_line())
    return line_share(plan(curve.begin), plan(curve.end), p);
  return curve.is_plan_arc() ? plan_arc_share(curve, p) : searched_share(curve, p);
}

Stretch stretch_of(const Curve &portion, const Curve &whole) {
  if (!whole.is_line())
    return {(portion.start_rad - whole.start_rad) / whole.sweep_rad,
            (portion.start_rad + portion.sweep_rad - whole.start_rad) / whole.sweep_rad};
  const Vec3 along = whole.end - whole.begin;
  const double square = glm::dot(along, along);
  if (square <= 0)
    return {};
  return {glm::dot(portion.begin - whole.begin, along) / square,
          glm::dot(portion.end - whole.begin, along) / square};
}

double level_share(const Curve &curve, double u) {
  const Vec3 velocity = curve.velocity(u);
  const double length = glm::length(velocity);
  return length > 0 ? glm::length(plan(velocity)) / length : 0.0;
}

Moment moment_at(const PathPiece &piece, double share, double level) {
  Moment moment;
  const double distance_mm = share * piece.length_mm;
  moment.rev_per_s = piece.turn == SpindleTurn::off ? 0.0 : rev_per_s_from_rpm(piece.spindle_rpm);
  moment.turns = moment.rev_per_s * (piece.start_s + piece.time_at(distance_mm));
  if (level > 0)
    moment.plan_speed_mm_per_s = piece.speed_at(distance_mm) * level;
  return moment;
}

Moment moment_at(const PathPiece &piece, double share) {
  return moment_at(piece, share, level_share(piece.curve, share));
}

} // namespace asperity
