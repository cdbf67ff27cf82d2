// Corner rounding in the plane of the two legs, whatever way that plane lies.
#include "rounding.h"

#include "asperity/motion/corner.h"

#include <algorithm>

namespace asperity {

namespace {

// A turn this small leaves a kink of less than 3 nm with legs of 0.1 mm: no reason to round it.
constexpr double kLeastTurn_rad = 1e-4;
// Below this the arc is a point: the path turns back on itself.
constexpr double kLeastRadius_mm = 1e-6;

} // namespace

std::optional<Curve> rounding_arc(const Curve &leg_in, const Curve &leg_out, double tolerance_mm,
                                  double longest_trim_mm) {
  const Vec3 in = glm::normalize(leg_in.end - leg_in.begin);
  const Vec3 out = glm::normalize(leg_out.end - leg_out.begin);
  const double turn = turn_between_rad(in, out);
  if (turn < kLeastTurn_rad)
    return std::nullopt;
  const double deviation = std::min(tolerance_mm, corner_deviation_mm(longest_trim_mm, turn));
  const double radius = corner_radius_mm(deviation, turn);
  if (radius < kLeastRadius_mm)
    return std::nullopt;

  // The centre lies square to the first leg, on the side to which the path turns.
  const double trim = corner_trim_mm(deviation, turn);
  const Vec3 corner = leg_out.begin;
  const Vec3 change = out - in;
  const Vec3 inward = glm::normalize(change - glm::dot(change, in) * in);
  const Vec3 begin = corner - in * trim;
  const Vec3 end = corner + out * trim;
  const Vec3 centre = begin + inward * radius;

  // A level corner becomes a plan arc like any other, which readers of the path may treat as an exact circle.
  if (in.z == 0.0 && out.z == 0.0)
    return Curve::plan_arc(begin, end, plan(centre), cross(plan(in), plan(out)) > 0.0 ? turn : -turn);

  Curve arc;
  arc.begin = begin;
  arc.end = end;
  arc.centre = centre;
  arc.axis_x = -inward;
  arc.axis_y = in;
  arc.radius_mm = radius;
  arc.sweep_rad = turn;
  return arc;
}

} // namespace asperity
