// One ray against a disc that moves along a line, along an arc, or smoothly in any way.
#include "sweep_wall_ray.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

Entry entry_at(const Section &section, double u, const Ray &ray) {
  return {disc_entry_mm(section.centre_at(u), section.radius_at(u), ray), u};
}

Entry lower_of(Entry a, Entry b) { return b.e_mm < a.e_mm ? b : a; }

Entry lower_end(const Section &section, const Ray &ray) {
  return lower_of(entry_at(section, section.u0, ray), entry_at(section, section.u1, ray));
}

/// f = a - sqrt(r² - b²) and its derivatives in u.
struct Slope {
  bool is_met = false;
  double a = 0, f = 0, first = 0, second = 0;
};

Slope slope_at(const Section &section, double u, const Ray &ray) {
  const Disc disc = section.at(u);
  const Vec2 tangent = left_of(ray.normal), v = disc.centre - ray.foot;
  const double a = glm::dot(v, ray.normal), b = glm::dot(v, tangent), r = disc.radius_mm;
  const double square = (r - b) * (r + b);
  if (!(square > 0.0) || r <= 0.0)
    return {};
  const double w = std::sqrt(square);
  const double b1 = glm::dot(disc.velocity, tangent), b2 = glm::dot(disc.bend, tangent);
  const double w1 = (r * disc.growth - b * b1) / w;
  const double w2 = (disc.growth * disc.growth + r * disc.growth_bend - b1 * b1 - b * b2 - w1 * w1) / w;
  return {true, a, a - w, glm::dot(disc.velocity, ray.normal) - w1, glm::dot(disc.bend, ray.normal) - w2};
}

/// Golden-section search where Newton has no start: the ray misses the disc at the guess.
Entry lowest_by_search(const Section &section, const Ray &ray) {
  constexpr int kSamples = 24;
  Entry best;
  const double step = (section.u1 - section.u0) / kSamples;
  for (int i = 0; i <= kSamples; ++i)
    best = lower_of(best, entry_at(section, i == kSamples ? section.u1 : section.u0 + i * step, ray));
  if (best.e_mm == kNotCut)
    return best;
  double low = std::max(section.u0, best.u - step), high = std::min(section.u1, best.u + step);
  constexpr double kGolden = 0.3819660112501051;
  Entry left = entry_at(section, low + kGolden * (high - low), ray);
  Entry right = entry_at(section, high - kGolden * (high - low), ray);
  for (int i = 0; i < 44; ++i) {
    best = lower_of(best, lower_of(left, right));
    if (left.e_mm < right.e_mm || (left.e_mm == right.e_mm && best.u <= left.u)) {
      high = right.u;
      right = left;
      left = entry_at(section, low + kGolden * (high - low), ray);
    } else {
      low = left.u;
      left = right;
      right = entry_at(section, high - kGolden * (high - low), ray);
    }
  }
  return best;
}

} // namespace

double disc_entry_mm(Vec2 centre, double radius, const Ray &ray) {
  const Vec2 v = centre - ray.foot;
  const double a = glm::dot(v, ray.normal), b = cross(v, ray.normal);
  const double square = (radius - b) * (radius + b);
  if (radius < 0.0 || !(square >= 0.0))
    return kNotCut;
  const double w = std::sqrt(square);
  return a + w > 0.0 ? a - w : kNotCut;
}

Entry lowest_straight(const Section &section, double contact_side, const Ray &ray) {
  // The contact runs along the line parallel to the motion at distance r: meet it with the ray.
  const Vec2 along = section.stroke->along + section.offset_slope;
  const double square = glm::dot(along, along);
  const Vec2 contact = contact_side / std::sqrt(square) * left_of(along);
  const double facing = glm::dot(ray.normal, contact);
  if (!(facing < 0.0))
    return lower_end(section, ray);
  const Vec2 start = section.stroke->from + section.offset;
  const double e = (section.steady_radius_mm - glm::dot(ray.foot - start, contact)) / facing;
  const double u = glm::dot(ray.foot + e * ray.normal - start, along) / square;
  if (u < section.u0)
    return entry_at(section, section.u0, ray);
  if (u > section.u1)
    return entry_at(section, section.u1, ray);
  const double a = glm::dot(start + u * along - ray.foot, ray.normal);
  return {2.0 * a - e > 0.0 ? e : kNotCut, u};
}

Entry lowest_round(const Section &section, double contact_side, const Ray &ray) {
  // The contact runs on a circle larger or smaller by r: meet it with the ray where it enters the swept ring.
  const Stroke &stroke = *section.stroke;
  const double turn = stroke.half_sweep_rad > 0.0 ? 1.0 : -1.0;
  const bool is_outer = contact_side * turn < 0.0;
  const double contact_radius =
      stroke.radius_mm + (is_outer ? section.steady_radius_mm : -section.steady_radius_mm);
  const Vec2 d = ray.foot - (stroke.centre + section.offset);
  const double along = glm::dot(d, ray.normal), aside = cross(ray.normal, d);
  const double square = (contact_radius - aside) * (contact_radius + aside);
  if (contact_radius <= 0.0 || !(square >= 0.0))
    return lower_end(section, ray);
  const double e = is_outer ? -along - std::sqrt(square) : -along + std::sqrt(square);
  const Vec2 q = d + e * ray.normal;
  if (glm::dot(q, stroke.middle) <= 0.0)
    return lower_end(section, ray);
  const Vec2 offset = section.offset + stroke.centre;
  if (turn * cross(section.centre_at(section.u0) - offset, q) < 0.0)
    return entry_at(section, section.u0, ray);
  if (turn * cross(q, section.centre_at(section.u1) - offset) < 0.0)
    return entry_at(section, section.u1, ray);
  const double a = stroke.radius_mm / contact_radius * glm::dot(q, ray.normal) - along;
  const double angle = std::atan2(cross(stroke.middle, q), glm::dot(stroke.middle, q));
  return {2.0 * a - e > 0.0 ? e : kNotCut, 0.5 + 0.5 * angle / stroke.half_sweep_rad};
}

Entry lowest_smooth(const Section &section, double u_guess, const Ray &ray) {
  // A Newton step that promises less than this is the last: what its parabola leaves out is of third order,
  // below 1e-11 mm. The corner arc starts like a square root, so there the step must be smaller.
  const double least_gain_mm = section.radius_law == Section::RadiusLaw::arc ? 1e-11 : 1e-8;
  double low = section.u0, high = section.u1;
  bool low_is_open = true, high_is_open = true; // the end itself has not been tried yet
  double u = std::clamp(u_guess, low, high);
  for (int i = 0; i < 60; ++i) {
    const Slope slope = slope_at(section, u, ray);
    if (!slope.is_met || (slope.second <= 0.0 && section.stroke->is_arc))
      return lowest_by_search(section, ray);
    // An end that still falls outwards is the lowest.
    if ((u == section.u0 && slope.first >= 0.0) || (u == section.u1 && slope.first <= 0.0))
      return {2.0 * slope.a - slope.f > 0.0 ? slope.f : kNotCut, u};
    if (slope.first > 0.0) {
      high = u;
      high_is_open = false;
    } else {
      low = u;
      low_is_open = false;
    }
    const double step = slope.second > 0.0 ? -slope.first / slope.second : (slope.first > 0.0 ? -1.0 : 1.0);
    double next = u + step;
    if (slope.second * step * step < least_gain_mm && slope.second > 0.0 && next >= section.u0 &&
        next <= section.u1) {
      const double f = slope.f + 0.5 * slope.first * step;
      return {2.0 * slope.a - f > 0.0 ? f : kNotCut, next};
    }
    if (next <= low)
      next = low_is_open ? section.u0 : 0.5 * (low + u);
    else if (next >= high)
      next = high_is_open ? section.u1 : 0.5 * (u + high);
    if (next == u)
      break;
    u = next;
  }
  return entry_at(section, u, ray);
}

Entry lowest_about_head_on(const Section &section, double u_guess, const Ray &ray) {
  const Vec2 tangent = left_of(ray.normal);
  const auto runs_along = [&](double u) { return glm::dot(section.at(u).velocity, tangent) > 0.0; };
  const bool at_begin = runs_along(section.u0);
  if (!section.stroke->is_arc || runs_along(section.u1) == at_begin)
    return lowest_smooth(section, u_guess, ray);
  double low = section.u0, high = section.u1;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (runs_along(middle) == at_begin ? low : high) = middle;
  }
  Section before = section, after = section;
  before.u1 = after.u0 = low;
  if (!(before.u1 > before.u0) || !(after.u1 > after.u0))
    return lowest_smooth(section, u_guess, ray);
  return lower_of(lowest_smooth(before, std::min(u_guess, low), ray),
                  lowest_smooth(after, std::max(u_guess, low), ray));
}

} // namespace asperity
