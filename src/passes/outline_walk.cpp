// Walking along a closed path.
#include "outline_walk.h"

#include "asperity/base/units.h"
#include "crossings.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Rests shorter than this are rounding, not path [mm].
constexpr double kNothing_mm = 1e-9;
/// Centres nearer than this are one [mm].
constexpr double kSameCentre_mm = 1e-9;
constexpr double kFullTurn = 2.0 * kPi * (1.0 + 1e-12);
constexpr double kAlmostFullTurn = 2.0 * kPi * (1.0 - 1e-12);

OutlineElement turned_round(OutlineElement e) {
  std::swap(e.begin, e.end);
  e.sweep_rad = -e.sweep_rad;
  return e;
}

OutlineElement part_of(const OutlineElement &e, double from_mm, double to_mm) {
  const double length_mm = e.length_mm();
  if (from_mm <= kNothing_mm && to_mm >= length_mm - kNothing_mm)
    return e;
  return {e.point(std::max(from_mm, 0.0)), e.point(std::min(to_mm, length_mm)), e.centre,
          e.sweep_rad * (to_mm - from_mm) / length_mm};
}

void append(std::vector<OutlineElement> &elements, const OutlineElement &next) {
  if (!elements.empty()) {
    OutlineElement &last = elements.back();
    const bool goes_on = last.is_arc() && next.is_arc() && (last.sweep_rad > 0.0) == (next.sweep_rad > 0.0) &&
                         glm::distance(last.centre, next.centre) < kSameCentre_mm;
    if (goes_on && std::abs(last.sweep_rad + next.sweep_rad) <= kFullTurn) {
      last.sweep_rad += next.sweep_rad;
      last.end = std::abs(last.sweep_rad) < kAlmostFullTurn ? next.end : last.begin;
      return;
    }
  }
  elements.push_back(next);
}

std::vector<OutlineElement> forwards(const Outline &path, double from_mm, double by_mm) {
  std::vector<OutlineElement> elements;
  double s = wrapped(from_mm, path.length_mm()), left_mm = by_mm;
  std::size_t i = path.element_at(s);
  double local_mm = s - path.element_start_mm(i);
  while (left_mm > kNothing_mm) {
    const OutlineElement &e = path.elements()[i];
    const double take_mm = std::min(left_mm, e.length_mm() - local_mm);
    if (take_mm > kNothing_mm) {
      append(elements, part_of(e, local_mm, local_mm + take_mm));
      left_mm -= take_mm;
    }
    i = (i + 1) % path.elements().size();
    local_mm = 0.0;
  }
  return elements;
}

} // namespace

double wrapped(double value, double length) {
  const double rest = std::fmod(value, length);
  return rest < 0.0 ? rest + length : rest;
}

std::vector<OutlineElement> stretch_of(const Outline &path, double from_mm, double by_mm) {
  if (by_mm >= 0.0)
    return forwards(path, from_mm, by_mm);
  std::vector<OutlineElement> elements = forwards(path, from_mm + by_mm, -by_mm);
  std::reverse(elements.begin(), elements.end());
  for (OutlineElement &element : elements)
    element = turned_round(element);
  return elements;
}

double place_nearest_mm(const Outline &path, Vec2 p) {
  double best_mm = 0.0, nearest_mm = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < path.elements().size(); ++i) {
    double foot_mm = 0.0;
    const double distance_mm = path.elements()[i].distance_mm(p, &foot_mm);
    if (distance_mm < nearest_mm) {
      nearest_mm = distance_mm;
      best_mm = path.element_start_mm(i) + foot_mm;
    }
  }
  return wrapped(best_mm, path.length_mm());
}

double place_at_angle_mm(const Outline &path, Vec2 centre, double deg) {
  const double angle = rad_from_deg(deg);
  const Vec2 direction{std::cos(angle), std::sin(angle)};
  const std::vector<double> crossings = line_crossings(path, centre, direction);
  const double far_mm = 2.0 * glm::distance(path.low(), path.high());
  const bool meets = !crossings.empty() && crossings.back() > 0.0;
  return place_nearest_mm(path, centre + (meets ? crossings.back() : far_mm) * direction);
}

} // namespace asperity
