// Where lines and circles cross.
#include "crossings.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A crossing is held to lie on an element within this [mm].
constexpr double kOn_mm = 1e-7;
constexpr double kParallel = 1e-12;

std::vector<double> line_places_on_circle(Vec2 origin, Vec2 direction, Vec2 centre, double radius_mm) {
  const double foot = glm::dot(centre - origin, direction);
  const double distance_mm = std::abs(cross(direction, centre - origin));
  if (distance_mm > radius_mm)
    return {};
  const double half_mm = std::sqrt((radius_mm - distance_mm) * (radius_mm + distance_mm));
  return {foot - half_mm, foot + half_mm};
}

std::vector<Vec2> line_with_circle(const OutlineElement &line, const OutlineElement &arc) {
  const Vec2 direction = line.tangent(0.0);
  std::vector<Vec2> points;
  for (const double t : line_places_on_circle(line.begin, direction, arc.centre, arc.radius_mm()))
    points.push_back(line.begin + t * direction);
  return points;
}

std::vector<Vec2> circle_with_circle(const OutlineElement &a, const OutlineElement &b) {
  const Vec2 between = b.centre - a.centre;
  const double d = glm::length(between), ra = a.radius_mm(), rb = b.radius_mm();
  if (d < kOn_mm || d > ra + rb || d < std::abs(ra - rb))
    return {};
  const double along = (d * d + ra * ra - rb * rb) / (2.0 * d);
  const double across = std::sqrt(std::max(0.0, ra * ra - along * along));
  const Vec2 foot = a.centre + along / d * between, side = across / d * left_of(between);
  return {foot - side, foot + side};
}

} // namespace

std::vector<Vec2> endless_crossings(const OutlineElement &a, const OutlineElement &b) {
  if (a.is_arc() && b.is_arc())
    return circle_with_circle(a, b);
  if (a.is_arc())
    return line_with_circle(b, a);
  if (b.is_arc())
    return line_with_circle(a, b);
  const Vec2 along_a = a.tangent(0.0), along_b = b.tangent(0.0);
  const double bottom = cross(along_a, along_b);
  if (std::abs(bottom) < kParallel)
    return {};
  return {a.begin + cross(b.begin - a.begin, along_b) / bottom * along_a};
}

std::vector<double> line_crossings(const Outline &outline, Vec2 origin, Vec2 direction) {
  std::vector<double> places;
  for (const OutlineElement &element : outline.elements()) {
    std::vector<double> found;
    if (element.is_arc()) {
      found = line_places_on_circle(origin, direction, element.centre, element.radius_mm());
    } else {
      const double bottom = cross(direction, element.tangent(0.0));
      if (std::abs(bottom) > kParallel)
        found.push_back(cross(element.begin - origin, element.tangent(0.0)) / bottom);
    }
    for (const double t : found)
      if (element.distance_mm(origin + t * direction) < kOn_mm)
        places.push_back(t);
  }
  std::sort(places.begin(), places.end());
  return places;
}

} // namespace asperity
