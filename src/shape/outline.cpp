// Lengths, points, normals and depths of a closed outline of lines and arcs.
#include "asperity/shape/outline.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

namespace asperity {
namespace {

constexpr double kFullTurn = 2.0 * kPi;

bool is_full_circle(const OutlineElement &arc) {
  return std::abs(arc.sweep_rad) >= kFullTurn * (1.0 - 1e-12);
}

/// Arc length from begin to the spoke through p, in [0, 2 pi r).
double arc_foot_mm(const OutlineElement &arc, Vec2 p) {
  const Vec2 a = arc.begin - arc.centre, b = p - arc.centre;
  double turn = std::atan2(cross(a, b), glm::dot(a, b));
  if (arc.sweep_rad < 0.0)
    turn = -turn;
  if (turn < 0.0)
    turn += kFullTurn;
  return turn * arc.radius_mm();
}

/// True when the spoke through p meets the arc.
bool spans(const OutlineElement &arc, Vec2 p) {
  if (is_full_circle(arc))
    return true;
  const double side = arc.sweep_rad > 0.0 ? 1.0 : -1.0;
  const Vec2 d = p - arc.centre;
  const bool after_begin = side * cross(arc.begin - arc.centre, d) >= 0.0;
  const bool before_end = side * cross(d, arc.end - arc.centre) >= 0.0;
  return std::abs(arc.sweep_rad) <= kPi ? after_begin && before_end : after_begin || before_end;
}

/// Signed area between the chord and the arc, positive when the arc bulges to the right of the chord.
double segment_area_mm2(const OutlineElement &arc) {
  const double r = arc.radius_mm();
  return 0.5 * r * r * (arc.sweep_rad - std::sin(arc.sweep_rad));
}

/// Turns of the element round p, counted on a ray towards +x: chord by the half-open crossing rule, then one
/// turn more or less when p lies between an arc and its chord. The same cross product decides both, so that a
/// point on a chord is never counted twice.
int turns_round(const OutlineElement &e, Vec2 p) {
  const Vec2 a = e.begin - p, b = e.end - p;
  const double side = cross(a, b);
  const bool upward = a.y <= 0.0 && b.y > 0.0, downward = a.y > 0.0 && b.y <= 0.0;
  int turns = (upward && side > 0.0 ? 1 : 0) - (downward && side < 0.0 ? 1 : 0);
  if (!e.is_arc() || glm::dot(p - e.centre, p - e.centre) >= glm::dot(e.begin - e.centre, e.begin - e.centre))
    return turns;
  const bool leftward = a.y == b.y && b.x < a.x;
  const bool on_right = side < 0.0 || (side == 0.0 && (upward || leftward));
  if (is_full_circle(e))
    turns += e.sweep_rad > 0.0 ? 1 : -1;
  else if (e.sweep_rad > 0.0 && on_right)
    ++turns;
  else if (e.sweep_rad < 0.0 && !on_right)
    --turns;
  return turns;
}

OutlineElement turned_round(OutlineElement e) {
  std::swap(e.begin, e.end);
  e.sweep_rad = -e.sweep_rad;
  return e;
}

OutlineElement arc_of(Vec2 begin, Vec2 end, Vec2 centre, double sweep_rad) {
  return {begin, end, centre, sweep_rad};
}

} // namespace

double OutlineElement::radius_mm() const { return glm::distance(begin, centre); }

double OutlineElement::length_mm() const {
  return is_arc() ? radius_mm() * std::abs(sweep_rad) : glm::distance(begin, end);
}

Vec2 OutlineElement::point(double s_mm) const {
  const double length = length_mm();
  if (!is_arc())
    return length > 0.0 ? begin + (s_mm / length) * (end - begin) : begin;
  const double a = sweep_rad * (length > 0.0 ? s_mm / length : 0.0);
  const Vec2 spoke = begin - centre;
  return centre + std::cos(a) * spoke + std::sin(a) * left_of(spoke);
}

Vec2 OutlineElement::tangent(double s_mm) const {
  if (!is_arc())
    return glm::normalize(end - begin);
  const Vec2 left = left_of(glm::normalize(point(s_mm) - centre));
  return sweep_rad > 0.0 ? left : -left;
}

double OutlineElement::distance_mm(Vec2 p, double *foot_s_mm) const {
  const double length = length_mm();
  double foot = 0.0;
  if (!is_arc()) {
    const Vec2 along = end - begin;
    const double t = length > 0.0 ? glm::dot(p - begin, along) / (length * length) : 0.0;
    foot = std::clamp(t, 0.0, 1.0) * length;
  } else if (spans(*this, p)) {
    if (foot_s_mm)
      *foot_s_mm = std::min(arc_foot_mm(*this, p), length);
    return std::abs(glm::distance(p, centre) - radius_mm());
  } else {
    foot = glm::distance(p, begin) <= glm::distance(p, end) ? 0.0 : length;
  }
  if (foot_s_mm)
    *foot_s_mm = foot;
  return glm::distance(p, point(foot));
}

Outline::Outline(std::vector<OutlineElement> elements) : elements_(std::move(elements)) {
  if (area_mm2() < 0.0) {
    std::reverse(elements_.begin(), elements_.end());
    std::transform(elements_.begin(), elements_.end(), elements_.begin(), turned_round);
  }
  constexpr double kFar = std::numeric_limits<double>::infinity();
  if (!elements_.empty())
    low_ = Vec2(kFar), high_ = Vec2(-kFar);
  for (const OutlineElement &e : elements_) {
    starts_.push_back(length_mm_);
    length_mm_ += e.length_mm();
    std::vector<Vec2> extremes = {e.begin, e.end};
    if (e.is_arc())
      for (const Vec2 axis : {Vec2(1, 0), Vec2(0, 1), Vec2(-1, 0), Vec2(0, -1)})
        if (spans(e, e.centre + axis))
          extremes.push_back(e.centre + e.radius_mm() * axis);
    for (const Vec2 p : extremes) {
      low_ = glm::min(low_, p);
      high_ = glm::max(high_, p);
    }
  }
}

Outline Outline::circle(Vec2 centre, double diameter_mm) {
  const Vec2 east = centre + Vec2(0.5 * diameter_mm, 0.0);
  return Outline({arc_of(east, east, centre, kFullTurn)});
}

Outline Outline::rounded_rectangle(Vec2 centre, double width_mm, double height_mm, double corner_radius_mm) {
  const double most = 0.5 * std::min(width_mm, height_mm);
  const double r = std::clamp(corner_radius_mm, 0.0, most);
  const double x = 0.5 * width_mm - r, y = 0.5 * height_mm - r;
  // From the lower right corner, counter-clockwise: each corner's centre, its arc, then the side that
  // follows.
  const Vec2 corners[] = {{x, -y}, {x, y}, {-x, y}, {-x, -y}};
  const Vec2 outward[] = {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < 4; ++i) {
    const Vec2 here = centre + corners[i], next = centre + corners[(i + 1) % 4];
    const Vec2 arc_end = here + r * outward[(i + 1) % 4], side_end = next + r * outward[(i + 1) % 4];
    if (r > 0.0)
      elements.push_back(arc_of(here + r * outward[i], arc_end, here, 0.5 * kPi));
    if (glm::distance(arc_end, side_end) > 0.0)
      elements.push_back({arc_end, side_end, Vec2(0.0), 0.0});
  }
  return Outline(std::move(elements));
}

double Outline::area_mm2() const {
  double area = 0.0;
  for (const OutlineElement &e : elements_) {
    const Vec2 origin = elements_.front().begin;
    area += 0.5 * cross(e.begin - origin, e.end - origin) + (e.is_arc() ? segment_area_mm2(e) : 0.0);
  }
  return area;
}

std::size_t Outline::element_at(double s_mm) const {
  assert(!elements_.empty());
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), s_mm);
  return after == starts_.begin() ? 0 : static_cast<std::size_t>(after - starts_.begin()) - 1;
}

namespace {

double wrapped(double s, double length) {
  const double rest = std::fmod(s, length);
  return rest < 0.0 ? rest + length : rest;
}

} // namespace

Vec2 Outline::point(double s_mm) const {
  const double s = wrapped(s_mm, length_mm_);
  const std::size_t i = element_at(s);
  return elements_[i].point(s - starts_[i]);
}

Vec2 Outline::outward_normal(double s_mm) const {
  const double s = wrapped(s_mm, length_mm_);
  const std::size_t i = element_at(s);
  return -left_of(elements_[i].tangent(s - starts_[i]));
}

double Outline::depth_mm(Vec2 p) const {
  double distance = std::numeric_limits<double>::infinity();
  int turns = 0;
  for (const OutlineElement &e : elements_) {
    distance = std::min(distance, e.distance_mm(p));
    turns += turns_round(e, p);
  }
  return turns > 0 ? distance : -distance;
}

} // namespace asperity
