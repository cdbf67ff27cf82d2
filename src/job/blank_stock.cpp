// How much of the blank stands outside a wall.
#include "blank_slice.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Thinnest skin that marching may not step over; layers and lines of prints are thicker.
constexpr double kLeastStep_mm = 0.01;

struct Ray {
  Vec2 begin;
  Vec2 direction; ///< unit
};

/// Where the ray lies in a disc; an empty span when it misses.
Span chord(const Ray &ray, Vec2 centre, double radius_mm) {
  const Vec2 from = ray.begin - centre;
  const double along = -glm::dot(from, ray.direction);
  const double aside = cross(from, ray.direction);
  if (radius_mm <= 0 || std::abs(aside) > radius_mm)
    return {0, -1};
  // (r - a)(r + a) keeps its digits where r*r - a*a would not.
  const double half = std::sqrt((radius_mm - std::abs(aside)) * (radius_mm + std::abs(aside)));
  return {along - half, along + half};
}

Span rectangle_span(const Ray &ray, Vec2 centre, Vec2 half_mm) {
  Span span{-1e9, 1e9};
  for (int i = 0; i < 2; ++i) {
    const double from = ray.begin[i] - centre[i];
    if (ray.direction[i] == 0.0) {
      if (std::abs(from) > half_mm[i])
        return {0, -1};
      continue;
    }
    const double a = (-half_mm[i] - from) / ray.direction[i], b = (half_mm[i] - from) / ray.direction[i];
    span = {std::max(span.begin, std::min(a, b)), std::min(span.end, std::max(a, b))};
  }
  return span;
}

/// Stretches of the ray within reach at which depth(t) >= 0. depth is a distance, so a step of |depth| is
/// safe.
template <class Depth> LineSpans marched(Depth depth, double reach_mm) {
  const auto crossing = [&depth](double inside, double outside) {
    while (std::abs(outside - inside) > kFace_mm) {
      const double middle = 0.5 * (inside + outside);
      (depth(middle) >= 0 ? inside : outside) = middle;
    }
    return inside;
  };
  LineSpans spans;
  double t = -reach_mm, d = depth(t), entered = t;
  while (t < reach_mm) {
    const double next = std::min(t + std::max(std::abs(d), kLeastStep_mm), reach_mm);
    const double next_d = depth(next);
    if (d < 0 && next_d >= 0)
      entered = crossing(next, t);
    if (d >= 0 && next_d < 0)
      spans.add({entered, crossing(t, next)});
    t = next;
    d = next_d;
  }
  if (d >= 0)
    spans.add({entered, reach_mm});
  return spans;
}

LineSpans base_spans(const Blank &blank, const Ray &ray, double z_mm, double reach_mm) {
  LineSpans spans;
  if (!is_between(z_mm, blank.z_bottom_mm, blank.z_top_mm))
    return spans;
  const double grown_mm = blank.allowance_mm + foot_mm(blank, z_mm);
  switch (blank.shape) {
  case BlankShape::cylinder:
    spans.add(chord(ray, blank.centre, 0.5 * blank.diameter_mm + grown_mm));
    return spans;
  case BlankShape::revolved:
    spans.add(chord(ray, blank.centre, profile_radius_mm(blank, z_mm) + grown_mm));
    return spans;
  case BlankShape::box:
    spans.add(rectangle_span(ray, blank.centre, 0.5 * blank.size_mm + Vec2(grown_mm)));
    return spans;
  case BlankShape::grown:
  case BlankShape::mesh:
    break;
  }
  return marched(
      [&](double t) { return base_depth_mm(blank, ray.begin + t * ray.direction, z_mm, grown_mm); },
      reach_mm);
}

} // namespace

double Blank::wall_stock_mm(Vec2 p, Vec2 normal, double z_mm, double reach_mm) const {
  const Ray ray{p, normal};
  LineSpans spans = base_spans(*this, ray, z_mm, reach_mm);
  for (const RoundFeature &boss : rounds)
    if (!boss.is_hole && is_between(z_mm, boss.z_bottom_mm, boss.z_top_mm))
      spans.add(chord(ray, boss.centre, round_radius_mm(*this, boss, z_mm)));
  for (const RoundFeature &hole : rounds)
    if (hole.is_hole && is_between(z_mm, hole.z_bottom_mm, hole.z_top_mm))
      spans.cut(chord(ray, hole.centre, round_radius_mm(*this, hole, z_mm)));

  // The stretch the wall point lies in, else the last one behind it; stock that only floats in front does not
  // belong to this wall.
  double stock_mm = -reach_mm;
  for (const Span &span : spans.all())
    if (span.begin <= kFace_mm && span.end > span.begin)
      stock_mm = span.end;
  return std::clamp(stock_mm, -reach_mm, reach_mm);
}

} // namespace asperity
