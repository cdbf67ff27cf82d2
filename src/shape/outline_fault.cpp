// Why an outline cannot be used: gaps, empty elements, crossings.
#include "asperity/base/units.h"
#include "asperity/shape/outline.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

/// Typed coordinates are rounded to about this; joints may miss each other by as much [mm].
constexpr double kJoint_mm = 1e-3;
/// A computed crossing is held to lie on an element within this [mm].
constexpr double kOn_mm = 1e-7;

bool is_finite(const OutlineElement &e) {
  const double all[] = {e.begin.x, e.begin.y, e.end.x, e.end.y, e.centre.x, e.centre.y, e.sweep_rad};
  return std::all_of(std::begin(all), std::end(all), [](double v) { return std::isfinite(v); });
}

std::string place(Vec2 p) { return fmt::format("({:.3f}, {:.3f})", p.x, p.y); }

std::string fault_of_element(const OutlineElement &e, std::size_t number) {
  if (!is_finite(e))
    return fmt::format("element {} has a coordinate that is not a number", number);
  if (e.length_mm() < kJoint_mm)
    return fmt::format("element {} at {} has no length", number, place(e.begin));
  if (!e.is_arc())
    return {};
  if (std::abs(e.sweep_rad) > 2.0 * kPi + 1e-9)
    return fmt::format("arc {} at {} runs round more than once", number, place(e.begin));
  if (glm::distance(e.point(e.length_mm()), e.end) > kJoint_mm)
    return fmt::format("arc {} from {} does not reach its end {}", number, place(e.begin), place(e.end));
  return {};
}

/// Crossings of two endless lines.
std::vector<Vec2> line_line(const OutlineElement &a, const OutlineElement &b) {
  const Vec2 da = a.end - a.begin, db = b.end - b.begin;
  const double bottom = cross(da, db);
  if (std::abs(bottom) <= 1e-12 * glm::length(da) * glm::length(db))
    return {};
  return {a.begin + cross(b.begin - a.begin, db) / bottom * da};
}

/// Crossings of an endless line and a full circle.
std::vector<Vec2> line_circle(const OutlineElement &line, const OutlineElement &arc) {
  const Vec2 along = glm::normalize(line.end - line.begin);
  const Vec2 foot = line.begin + glm::dot(arc.centre - line.begin, along) * along;
  const double r = arc.radius_mm(), d = glm::distance(foot, arc.centre);
  if (d > r)
    return {};
  const double half = std::sqrt((r - d) * (r + d));
  return {foot - half * along, foot + half * along};
}

std::vector<Vec2> circle_circle(const OutlineElement &a, const OutlineElement &b) {
  const double d = glm::distance(a.centre, b.centre), ra = a.radius_mm(), rb = b.radius_mm();
  if (d == 0.0 || d > ra + rb || d < std::abs(ra - rb))
    return {};
  const double along = (d * d + ra * ra - rb * rb) / (2.0 * d);
  const double half = std::sqrt(std::max(0.0, (ra - along) * (ra + along)));
  const Vec2 axis = (b.centre - a.centre) / d;
  return {a.centre + along * axis + half * left_of(axis), a.centre + along * axis - half * left_of(axis)};
}

/// Points that may lie on both elements: crossings of what carries them, and ends (for overlaps).
std::vector<Vec2> meeting_points(const OutlineElement &a, const OutlineElement &b) {
  std::vector<Vec2> points = a.is_arc() ? (b.is_arc() ? circle_circle(a, b) : line_circle(b, a))
                                        : (b.is_arc() ? line_circle(a, b) : line_line(a, b));
  points.insert(points.end(), {a.begin, a.end, b.begin, b.end});
  return points;
}

/// How far from a joint two joined elements may still touch. A line rounded to kJoint_mm cuts a circle it
/// should touch over sqrt(2 r kJoint) on either side (derived: sagitta of a chord).
double joint_reach_mm(const OutlineElement &a, const OutlineElement &b) {
  const double r = std::max(a.is_arc() ? a.radius_mm() : 0.0, b.is_arc() ? b.radius_mm() : 0.0);
  return 2.0 * kJoint_mm + std::sqrt(2.0 * r * kJoint_mm);
}

bool near_joint(Vec2 p, const OutlineElement &from, const OutlineElement &to, double reach) {
  return glm::distance(from.end, to.begin) <= kJoint_mm && glm::distance(p, to.begin) <= reach;
}

bool boxes_apart(const Outline &a, const Outline &b) {
  const Vec2 gap = glm::max(a.low() - b.high(), b.low() - a.high());
  return std::max(gap.x, gap.y) > kOn_mm;
}

std::string crossing_of(const OutlineElement &a, const OutlineElement &b, bool a_then_b, bool b_then_a) {
  const double reach = joint_reach_mm(a, b);
  for (const Vec2 p : meeting_points(a, b)) {
    if (a.distance_mm(p) > kOn_mm || b.distance_mm(p) > kOn_mm)
      continue;
    if ((a_then_b && near_joint(p, a, b, reach)) || (b_then_a && near_joint(p, b, a, reach)))
      continue;
    return fmt::format("the outline crosses or touches itself at {}", place(p));
  }
  return {};
}

std::string crossing_among(const std::vector<OutlineElement> &elements) {
  std::vector<Outline> boxes;
  for (const OutlineElement &e : elements)
    boxes.push_back(Outline({e}));
  const std::size_t n = elements.size();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 1; j < n; ++j) {
      if (boxes_apart(boxes[i], boxes[j]))
        continue;
      const std::string fault = crossing_of(elements[i], elements[j], j == i + 1, i == 0 && j == n - 1);
      if (!fault.empty())
        return fault;
    }
  return {};
}

} // namespace

std::string Outline::fault() const {
  if (elements_.empty())
    return "the outline has no elements";
  for (std::size_t i = 0; i < elements_.size(); ++i)
    if (std::string fault = fault_of_element(elements_[i], i + 1); !fault.empty())
      return fault;
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    const OutlineElement &e = elements_[i], &next = elements_[(i + 1) % elements_.size()];
    if (const double gap = glm::distance(e.end, next.begin); gap > kJoint_mm)
      return fmt::format("gap of {:.4f} mm between {} and {}", gap, place(e.end), place(next.begin));
  }
  if (std::string fault = crossing_among(elements_); !fault.empty())
    return fault;
  if (area_mm2() <= kJoint_mm * kJoint_mm)
    return "the outline encloses no area";
  return {};
}

} // namespace asperity
