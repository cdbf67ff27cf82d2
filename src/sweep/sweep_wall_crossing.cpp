// The far side of the disc passing the foot of a ray: beyond that moment the cutter no longer counts.
#include "sweep_wall_ray.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace asperity {

namespace {

constexpr double kArcOverChord = 1.02; // 1.007 for an arc of kMostSweep_rad, and some for the offsets

/// How far the foot of a ray lies outside the disc at u. Convex in u but for the bend of short arcs, because
/// a cutter's radius is a concave function of height.
class Outside {
public:
  Outside(const Section &section, Vec2 foot) : section_(section), foot_(foot) {
    begin_ = section.centre_at(section.u0) - foot;
    end_ = section.centre_at(section.u1) - foot;
    most_radius_mm_ = std::max(section.radius_at(section.u0), section.radius_at(section.u1));
    length_mm_ = kArcOverChord * glm::length(end_ - begin_);
  }

  double operator()(double u) const {
    return glm::length(section_.centre_at(u) - foot_) - section_.radius_at(u);
  }

  /// Places between which the distance has one lowest point at most: the ends and, on arcs, where the arc
  /// runs nearest to the foot and farthest from it. Returns how many.
  std::size_t find_knots(std::array<double, 4> &knots) const {
    knots = {section_.u0, section_.u1, section_.u1, section_.u1};
    if (!section_.stroke->is_arc)
      return 2;
    const double u_middle = 0.5 * (section_.u0 + section_.u1);
    const Stroke &stroke = *section_.stroke;
    const Vec2 to_foot = foot_ - (section_.centre_at(u_middle) - stroke.arm(u_middle));
    std::size_t count = 1;
    for (const double sign : {1.0, -1.0}) {
      const double angle =
          std::atan2(sign * cross(stroke.middle, to_foot), sign * glm::dot(stroke.middle, to_foot));
      const double u = 0.5 + 0.5 * angle / stroke.half_sweep_rad;
      if (u > section_.u0 && u < section_.u1)
        knots[count++] = u;
    }
    if (count == 3 && knots[1] > knots[2])
      std::swap(knots[1], knots[2]);
    knots[count++] = section_.u1;
    return count;
  }

  /// A u in low..high at which the foot is in the disc, or a negative number.
  double find_inside(double low, double high) const {
    const double per_u = length_mm_ / (section_.u1 - section_.u0);
    for (int i = 0; i < 60; ++i) {
      const double u = 0.5 * (low + high);
      const Disc disc = section_.at(u);
      const Vec2 v = disc.centre - foot_;
      const double distance = glm::length(v);
      if (distance < disc.radius_mm)
        return u;
      if (distance - most_radius_mm_ > 0.5 * (high - low) * per_u)
        return -1.0;
      (glm::dot(v, disc.velocity) > disc.growth * distance ? high : low) = u;
    }
    return -1.0;
  }

private:
  const Section &section_;
  Vec2 foot_, begin_{0.0}, end_{0.0};
  double most_radius_mm_ = 0, length_mm_ = 0;
};

/// Line and steady radius: the two places where the foot lies on the disc's rim are roots of a quadratic.
Entry lowest_at_straight_crossing(const Section &section, const Ray &ray) {
  const Vec2 along = section.stroke->along + section.offset_slope;
  const Vec2 from = section.stroke->from + section.offset - ray.foot;
  const double square = glm::dot(along, along), aside = cross(along, from);
  const double radius = section.steady_radius_mm;
  const double half_square = radius * radius * square - aside * aside;
  if (!(half_square > 0.0))
    return {};
  Entry best;
  for (const double sign : {-1.0, 1.0}) {
    const double u = (sign * std::sqrt(half_square) - glm::dot(from, along)) / square;
    const double a = glm::dot(from + u * along, ray.normal);
    if (u >= section.u0 && u <= section.u1 && a < 0.0 && 2.0 * a < best.e_mm)
      best = {2.0 * a, u};
  }
  return best;
}

} // namespace

CrossingBounds::CrossingBounds(const Section &section, const Disc &begin, const Disc &end)
    : begin_(begin.centre), end_(end.centre), chord_mm_(glm::length(end.centre - begin.centre)),
      length_mm_(kArcOverChord * chord_mm_), most_radius_mm_(std::max(begin.radius_mm, end.radius_mm)),
      least_radius_mm_(std::min(begin.radius_mm, end.radius_mm)) {
  // Every centre lies within half the length of an end; along a line, between discs that both hold the foot.
  const double inside = std::max(0.0, least_radius_mm_ - (section.stroke->is_arc ? 0.5 * length_mm_ : 0.0));
  const double outside = most_radius_mm_ + 0.5 * length_mm_;
  always_inside_mm2_ = inside * inside;
  always_outside_mm2_ = outside * outside;
}

bool CrossingBounds::allow(const Ray &ray, double envelope_mm) const {
  const Vec2 first = begin_ - ray.foot, last = end_ - ray.foot;
  // A crossing leaves e = 2a with a < 0, and no centre is lower than half the length allows.
  const double least_twice_a = glm::dot(first + last, ray.normal) - length_mm_;
  if (least_twice_a >= 0.0 || least_twice_a > envelope_mm)
    return false;
  const double a = glm::dot(first, first), b = glm::dot(last, last);
  return std::max(a, b) >= always_inside_mm2_ && std::min(a, b) <= always_outside_mm2_;
}

Entry lowest_at_crossing(const Section &section, const Ray &ray) {
  if (section.is_straight)
    return lowest_at_straight_crossing(section, ray);
  const Outside outside(section, ray.foot);

  // Where the foot enters or leaves the disc on its far side, a = -sqrt(r² - b²), so e = 2a.
  Entry best;
  const auto try_crossing = [&](double in, double out) {
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (in + out);
      (outside(middle) < 0.0 ? in : out) = middle;
    }
    const double a = glm::dot(section.centre_at(in) - ray.foot, ray.normal);
    if (a < 0.0 && 2.0 * a < best.e_mm)
      best = {2.0 * a, in};
  };
  std::array<double, 4> knots;
  const std::size_t count = outside.find_knots(knots);
  bool was_inside = outside(knots[0]) < 0.0;
  for (std::size_t i = 1; i < count; ++i) {
    const double begin = knots[i - 1], end = knots[i];
    const bool is_inside = outside(end) < 0.0;
    if (was_inside != is_inside) {
      was_inside ? try_crossing(begin, end) : try_crossing(end, begin);
    } else if (!is_inside) {
      const double between = outside.find_inside(begin, end);
      if (between >= 0.0) {
        try_crossing(between, begin);
        try_crossing(between, end);
      }
    }
    was_inside = is_inside;
  }
  return best;
}

} // namespace asperity
