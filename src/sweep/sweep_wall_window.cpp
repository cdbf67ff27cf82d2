// Projects contact paths and discs on the elements of an outline.
#include "sweep_wall_window.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

WallElement wall_element_of(const WallChart &chart, std::size_t index) {
  const OutlineElement &shape = chart.outline.elements()[index];
  WallElement element;
  element.shape = shape;
  element.is_arc = shape.is_arc();
  const double length = shape.length_mm();
  element.half_length_mm = 0.5 * length;
  element.s_middle_mm = chart.outline.element_start_mm(index) + 0.5 * length;
  const Vec2 tangent = shape.tangent(0.5 * length), outward = -left_of(tangent);
  element.normal = chart.inside ? -outward : outward;
  element.low = glm::min(shape.begin, shape.end);
  element.high = glm::max(shape.begin, shape.end);
  if (element.is_arc) {
    element.radius_mm = shape.radius_mm();
    element.middle = shape.centre;
    element.direction = (shape.point(0.5 * length) - shape.centre) / element.radius_mm;
    element.turn = shape.sweep_rad > 0.0 ? 1.0 : -1.0;
    element.facing = glm::dot(element.direction, element.normal) > 0.0 ? 1.0 : -1.0;
    element.low = shape.centre - element.radius_mm;
    element.high = shape.centre + element.radius_mm;
  } else {
    element.middle = shape.point(0.5 * length);
    element.direction = tangent;
  }
  return element;
}

} // namespace

double WallElement::position_mm(Vec2 q) const {
  const Vec2 d = q - middle;
  if (!is_arc)
    return glm::dot(d, direction);
  return turn * radius_mm * std::atan2(cross(direction, d), glm::dot(direction, d));
}

double WallElement::height_mm(Vec2 q) const {
  return is_arc ? facing * (glm::length(q - middle) - radius_mm) : glm::dot(q - middle, normal);
}

Vec2 WallElement::normal_at(double position) const {
  if (!is_arc)
    return normal;
  const double angle = turn * position / radius_mm;
  return facing * (std::cos(angle) * direction + std::sin(angle) * left_of(direction));
}

std::vector<WallElement> wall_elements_of(const WallChart &chart) {
  std::vector<WallElement> elements;
  std::size_t column = 0;
  for (std::size_t i = 0; i < chart.outline.elements().size(); ++i) {
    WallElement element = wall_element_of(chart, i);
    element.column_begin = column;
    while (column < chart.columns() && chart.outline.element_at(chart.s_mm[column]) == i)
      ++column;
    element.column_end = column;
    if (element.column_end > element.column_begin)
      elements.push_back(element);
  }
  return elements;
}

Window whole_window(const WallElement &element) { return {-element.half_length_mm, element.half_length_mm}; }

double distance_to_segment_mm(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 along = b - a;
  const double square = glm::dot(along, along);
  const double u = square > 0.0 ? std::clamp(glm::dot(p - a, along) / square, 0.0, 1.0) : 0.0;
  return glm::length(p - a - u * along);
}

Window window_of_discs(const WallElement &element, Vec2 a, Vec2 b, double radius) {
  const double first = element.position_mm(a);
  if (!element.is_arc) {
    const double second = element.position_mm(b);
    return {std::min(first, second) - radius, std::max(first, second) + radius};
  }
  const double nearest = distance_to_segment_mm(element.middle, a, b);
  if (nearest <= 1.0001 * radius)
    return whole_window(element);
  const Vec2 from = a - element.middle, to = b - element.middle;
  const double second =
      first + element.turn * element.radius_mm * std::atan2(cross(from, to), glm::dot(from, to));
  const double half = element.radius_mm * std::asin(radius / nearest);
  return {std::min(first, second) - half, std::max(first, second) + half};
}

Window window_of_disc(const WallElement &element, Vec2 centre, double radius, double e_most) {
  const double position = element.position_mm(centre);
  if (!element.is_arc) {
    // Entering no higher than e_most needs sqrt(r² - b²) >= a - e_most.
    const double least = std::max(0.0, glm::dot(centre - element.middle, element.normal) - e_most);
    if (least > radius)
      return {0.0, -1.0};
    const double half = std::sqrt((radius - least) * (radius + least));
    return {position - half, position + half};
  }
  // Rays through the centre of the arc: the disc seen from there, or the part of it within the circle of
  // e_most.
  const double far = glm::length(centre - element.middle);
  const double limit = element.radius_mm + element.facing * e_most;
  const Window all{position - kPi * element.radius_mm, position + kPi * element.radius_mm};
  if (far <= radius || limit <= 0.0)
    return all;
  const double tangent_length = std::sqrt((far - radius) * (far + radius));
  double angle = std::asin(radius / far);
  if (element.facing * (tangent_length - limit) > 0.0) {
    const double cosine = (far * far + limit * limit - radius * radius) / (2.0 * far * limit);
    if (cosine > 1.0)
      return {0.0, -1.0};
    angle = std::acos(std::max(-1.0, cosine));
  }
  return {position - angle * element.radius_mm, position + angle * element.radius_mm};
}

ColumnFinder::ColumnFinder(const WallChart &chart) : s_mm_(&chart.s_mm) {
  const std::vector<double> &s = chart.s_mm;
  if (s.size() < 3)
    return;
  const double step = (s.back() - s.front()) / static_cast<double>(s.size() - 1);
  for (std::size_t i = 0; i < s.size(); ++i)
    if (std::abs(s[i] - (s.front() + step * static_cast<double>(i))) > 0.01 * step)
      return;
  per_mm_ = 1.0 / step;
}

std::size_t ColumnFinder::first_from(double s) const {
  const std::vector<double> &all = *s_mm_;
  if (per_mm_ == 0.0)
    return static_cast<std::size_t>(std::lower_bound(all.begin(), all.end(), s) - all.begin());
  const double guess = (s - all.front()) * per_mm_;
  if (guess <= 0.0)
    return all.empty() || all.front() >= s ? 0 : 1;
  if (guess >= static_cast<double>(all.size()))
    return all.size();
  auto i = static_cast<std::size_t>(guess);
  while (i > 0 && all[i - 1] >= s)
    --i;
  while (i < all.size() && all[i] < s)
    ++i;
  return i;
}

} // namespace asperity
