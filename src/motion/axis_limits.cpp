// Axis limits turned into limits along lines, arcs and helices.
#include "axis_limits.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

// Stand in for a limit of zero, so that a forgotten value gives a very slow machine instead of an endless
// time.
constexpr double kLeastSpeed_mm_per_s = 1e-6;
constexpr double kLeastAcceleration_mm_per_s2 = 1e-6;

double limit_along(Vec3 share, Vec3 axis_limit, double least) {
  double limit = std::numeric_limits<double>::infinity();
  for (int axis = 0; axis < 3; ++axis)
    if (share[axis] > 0.0)
      limit = std::min(limit, axis_limit[axis] / share[axis]);
  return std::max(limit, least);
}

Vec3 largest_of(Vec3 a, Vec3 b) { return {std::max(a.x, b.x), std::max(a.y, b.y), std::max(a.z, b.z)}; }

Vec3 size_of(Vec3 a) { return {std::abs(a.x), std::abs(a.y), std::abs(a.z)}; }

/// Largest |component| of the unit tangent on each axis anywhere on the arc.
Vec3 largest_tangent_share(const Curve &arc, double length_mm) {
  Vec3 share = largest_of(size_of(arc.velocity(0.0)), size_of(arc.velocity(1.0)));
  const double sweep = std::abs(arc.sweep_rad);
  for (int axis = 0; axis < 3; ++axis) {
    // The component is stationary where cos a X + sin a Y = 0, twice a turn: first such angle on the way, and
    // the next.
    const double stationary = std::atan2(-arc.axis_x[axis], arc.axis_y[axis]);
    const double forward = arc.sweep_rad > 0.0 ? stationary - arc.start_rad : arc.start_rad - stationary;
    const double first = forward - kPi * std::floor(forward / kPi);
    for (const double on_the_way : {first, first + kPi})
      if (on_the_way < sweep)
        share[axis] = std::max(share[axis], std::abs(arc.velocity(on_the_way / sweep)[axis]));
  }
  return share / length_mm;
}

} // namespace

double axis_speed_limit_mm_per_s(const Curve &curve, double length_mm, Vec3 axis_limit_mm_per_s) {
  const Vec3 share = curve.is_line() ? size_of(curve.end - curve.begin) / length_mm
                                     : largest_tangent_share(curve, length_mm);
  return limit_along(share, axis_limit_mm_per_s, kLeastSpeed_mm_per_s);
}

double axis_acceleration_limit_mm_per_s2(const Curve &curve, double length_mm, Vec3 axis_limit_mm_per_s2) {
  if (curve.is_line())
    return limit_along(size_of(curve.end - curve.begin) / length_mm, axis_limit_mm_per_s2,
                       kLeastAcceleration_mm_per_s2);
  // derived: the unit vectors of the plane of axis_x and axis_y reach hypot(X_i, Y_i) on axis i; the tangent
  // of a helix reaches that times its plan share, plus its rise.
  const double plan_share = curve.radius_mm * std::abs(curve.sweep_rad) / length_mm;
  Vec3 share{0.0};
  for (int axis = 0; axis < 3; ++axis) {
    const double in_plane = std::hypot(curve.axis_x[axis], curve.axis_y[axis]);
    share[axis] = std::max(in_plane, plan_share * in_plane + std::abs(curve.rise[axis]) / length_mm);
  }
  return limit_along(share, axis_limit_mm_per_s2, kLeastAcceleration_mm_per_s2);
}

double centripetal_limit_mm_per_s(const Curve &curve, double length_mm, double acceleration_mm_per_s2) {
  const double in_plane_mm = curve.radius_mm * std::abs(curve.sweep_rad);
  if (in_plane_mm <= 0.0)
    return std::numeric_limits<double>::infinity();
  // derived: only the share of the speed in the arc's plane turns, so v (r sweep / length) <= sqrt(a r).
  return std::sqrt(acceleration_mm_per_s2 * curve.radius_mm) * length_mm / in_plane_mm;
}

} // namespace asperity
