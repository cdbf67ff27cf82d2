// Arcs from their end, centre or radius, in any of the three planes.
#include "arc.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity::gcode {
namespace {

/// Ends closer than this in the plane are one point: a whole turn.
constexpr double kSamePoint_mm = 1e-6;

/// Longest arc whose centre may be moved to suit both ends; beyond it the chord is too short to steer by.
constexpr double kSteadySweep_rad = 1.5 * kPi;

/// The point of the chord's perpendicular bisector nearest to `centre`.
Vec2 nearest_on_bisector(Vec2 begin, Vec2 end, Vec2 centre) {
  const Vec2 along = glm::normalize(end - begin);
  const Vec2 middle = 0.5 * (begin + end);
  return centre - glm::dot(centre - middle, along) * along;
}

Vec3 unit_axis(int axis) {
  Vec3 unit(0.0);
  unit[axis] = 1.0;
  return unit;
}

} // namespace

PlaneAxes axes_of(Plane plane) {
  switch (plane) {
  case Plane::xz:
    return {2, 0, 1};
  case Plane::yz:
    return {1, 2, 0};
  case Plane::xy:
    break;
  }
  return {0, 1, 2};
}

double radius_mismatch_mm(Vec2 begin, Vec2 end, Vec2 centre) {
  return std::abs(glm::distance(begin, centre) - glm::distance(end, centre));
}

std::optional<Vec2> centre_from_radius(Vec2 begin, Vec2 end, double radius_mm, bool is_clockwise,
                                       double slack_mm) {
  const double half_chord = 0.5 * glm::distance(begin, end);
  const double radius = std::abs(radius_mm);
  if (half_chord < 0.5 * kSamePoint_mm || half_chord > radius + slack_mm)
    return {};
  const double height = std::sqrt(std::max(0.0, (radius - half_chord) * (radius + half_chord)));
  // The short counter-clockwise arc has its centre to the left of the chord; each change of sense swaps
  // sides.
  const bool is_left = is_clockwise == (radius_mm < 0.0);
  const Vec2 side = left_of((end - begin) / (2.0 * half_chord));
  return 0.5 * (begin + end) + (is_left ? height : -height) * side;
}

double sweep_about(Vec2 centre, Vec2 begin, Vec2 end, bool is_clockwise) {
  const double turn = is_clockwise ? -2.0 * kPi : 2.0 * kPi;
  if (glm::distance(begin, end) < kSamePoint_mm)
    return turn;
  const Vec2 a = begin - centre;
  const Vec2 b = end - centre;
  const double angle = std::atan2(cross(a, b), glm::dot(a, b));
  const bool has_wanted_sense = is_clockwise ? angle < 0.0 : angle > 0.0;
  return has_wanted_sense ? angle : angle + turn;
}

Curve arc_about(const ArcEnds &ends, Vec2 centre) {
  const PlaneAxes axes = axes_of(ends.plane);
  const Vec2 begin = axes.in_plane(ends.begin);
  const Vec2 end = axes.in_plane(ends.end);
  const double rough_sweep = sweep_about(centre, begin, end, ends.is_clockwise);
  if (std::abs(rough_sweep) <= kSteadySweep_rad)
    centre = nearest_on_bisector(begin, end, centre);
  const Vec2 out = begin - centre;

  Curve arc;
  arc.begin = ends.begin;
  arc.end = ends.end;
  arc.axis_x = unit_axis(axes.first);
  arc.axis_y = unit_axis(axes.second);
  arc.centre = centre.x * arc.axis_x + centre.y * arc.axis_y;
  arc.centre[axes.third] = ends.begin[axes.third];
  arc.rise = Vec3(0.0);
  arc.rise[axes.third] = ends.end[axes.third] - ends.begin[axes.third];
  arc.radius_mm = glm::length(out);
  arc.start_rad = std::atan2(out.y, out.x);
  arc.sweep_rad = sweep_about(centre, begin, end, ends.is_clockwise);
  return arc;
}

} // namespace asperity::gcode
