// Points, speeds, lengths and portions of lines, arcs and helices.
#include "asperity/shape/curve.h"

#include <cmath>

namespace asperity {
namespace {

/// Unit vector from the arc's centre to its point at angle a.
Vec3 spoke(const Curve &arc, double a) { return std::cos(a) * arc.axis_x + std::sin(a) * arc.axis_y; }

} // namespace

Curve Curve::line(Vec3 begin, Vec3 end) {
  Curve curve;
  curve.begin = begin;
  curve.end = end;
  return curve;
}

Curve Curve::plan_arc(Vec3 begin, Vec3 end, Vec2 centre_xy, double sweep_rad) {
  const Vec2 out = plan(begin) - centre_xy;
  Curve curve;
  curve.begin = begin;
  curve.end = end;
  curve.centre = {centre_xy.x, centre_xy.y, begin.z};
  curve.rise = {0.0, 0.0, end.z - begin.z};
  curve.radius_mm = glm::length(out);
  curve.start_rad = std::atan2(out.y, out.x);
  curve.sweep_rad = sweep_rad;
  return curve;
}

double Curve::length_mm() const {
  if (is_line())
    return glm::distance(begin, end);
  return std::hypot(radius_mm * sweep_rad, glm::length(rise));
}

Vec3 Curve::point(double u) const {
  if (is_line())
    return begin + u * (end - begin);
  return centre + radius_mm * spoke(*this, start_rad + u * sweep_rad) + u * rise;
}

Vec3 Curve::velocity(double u) const {
  if (is_line())
    return end - begin;
  const double a = start_rad + u * sweep_rad;
  return radius_mm * sweep_rad * (std::cos(a) * axis_y - std::sin(a) * axis_x) + rise;
}

Curve Curve::portion(double u0, double u1) const {
  // The ends as given, so that pieces cut from one curve join without a rounding step.
  return portion(u0, u1, u0 == 0.0 ? begin : point(u0), u1 == 1.0 ? end : point(u1));
}

Curve Curve::portion(double u0, double u1, Vec3 part_begin, Vec3 part_end) const {
  Curve part = *this;
  part.begin = part_begin;
  part.end = part_end;
  if (is_line())
    return part;
  part.centre = centre + u0 * rise;
  part.start_rad = start_rad + u0 * sweep_rad;
  part.sweep_rad = (u1 - u0) * sweep_rad;
  part.rise = (u1 - u0) * rise;
  return part;
}

Curve Curve::moved_by(Vec3 d) const {
  Curve moved = *this;
  moved.begin += d;
  moved.end += d;
  moved.centre += d;
  return moved;
}

} // namespace asperity
