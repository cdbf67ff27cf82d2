// The blank's size in plan and its cross-section as an upright beam.
#include "blank_slice.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

struct PlanBox {
  Vec2 low{0.0}, high{0.0};
};

PlanBox base_box(const Blank &blank) {
  switch (blank.shape) {
  case BlankShape::cylinder:
    return {blank.centre - Vec2(0.5 * blank.diameter_mm), blank.centre + Vec2(0.5 * blank.diameter_mm)};
  case BlankShape::box:
    return {blank.centre - 0.5 * blank.size_mm, blank.centre + 0.5 * blank.size_mm};
  case BlankShape::grown:
    return {blank.grown_from.low(), blank.grown_from.high()};
  case BlankShape::mesh:
    return {plan(blank.mesh.mesh().low), plan(blank.mesh.mesh().high)};
  case BlankShape::revolved:
    break;
  }
  double widest_mm = 0;
  for (Vec2 point : blank.profile_mm)
    widest_mm = std::max(widest_mm, point.x);
  return {blank.centre - Vec2(widest_mm), blank.centre + Vec2(widest_mm)};
}

PlanBox plan_box(const Blank &blank) {
  PlanBox box = base_box(blank);
  box.low -= Vec2(blank.allowance_mm + blank.elephant_foot_mm);
  box.high += Vec2(blank.allowance_mm + blank.elephant_foot_mm);
  for (const RoundFeature &boss : blank.rounds)
    if (!boss.is_hole) {
      box.low = glm::min(box.low, boss.centre - Vec2(0.5 * boss.diameter_mm + blank.elephant_foot_mm));
      box.high = glm::max(box.high, boss.centre + Vec2(0.5 * boss.diameter_mm + blank.elephant_foot_mm));
    }
  return box;
}

/// Slice of a plain round or square blank, closed form.
BlankSection round_section(double diameter_mm) {
  const double d2 = diameter_mm * diameter_mm;
  return {kPi * d2 / 4, kPi * d2 * d2 / 64, kPi * d2 * diameter_mm / 32};
}

BlankSection box_section(Vec2 size_mm) {
  const double wide = std::max(size_mm.x, size_mm.y), thin = std::min(size_mm.x, size_mm.y);
  return {wide * thin, wide * thin * thin * thin / 12, wide * thin * thin / 6};
}

/// Sums of a slice over a grid of cells, each weighted by its covered share.
struct AreaSums {
  double area = 0, x = 0, y = 0, xx = 0, yy = 0, xy = 0;
};

template <class Visit> void for_each_cell(const Blank &blank, double z_mm, Visit visit) {
  constexpr int kCells = 200; // edges cut cells at all places, so that the error averages out below 0.1 %
  const PlanBox box = plan_box(blank);
  const Vec2 cell = (box.high - box.low) / static_cast<double>(kCells);
  const double size_mm = std::sqrt(cell.x * cell.y);
  for (int j = 0; j < kCells; ++j)
    for (int i = 0; i < kCells; ++i) {
      const Vec2 p = box.low + Vec2((i + 0.5) * cell.x, (j + 0.5) * cell.y);
      const double share = std::clamp(0.5 + blank.plan_depth_mm(p, z_mm) / size_mm, 0.0, 1.0);
      if (share > 0)
        visit(p, share * cell.x * cell.y);
    }
}

BlankSection sampled_section(const Blank &blank, double z_mm) {
  AreaSums s;
  for_each_cell(blank, z_mm, [&s](Vec2 p, double area) {
    s.area += area;
    s.x += area * p.x;
    s.y += area * p.y;
    s.xx += area * p.x * p.x;
    s.yy += area * p.y * p.y;
    s.xy += area * p.x * p.y;
  });
  if (s.area <= 0)
    return {};

  // Principal axis of least second moment: the blank bends most along it.
  const Vec2 centroid(s.x / s.area, s.y / s.area);
  const double xx = s.xx - s.x * centroid.x, yy = s.yy - s.y * centroid.y, xy = s.xy - s.x * centroid.y;
  const double least = 0.5 * (xx + yy) - std::hypot(0.5 * (xx - yy), xy);
  const double angle = 0.5 * std::atan2(2 * xy, xx - yy) + kPi / 2;
  const Vec2 weak(std::cos(angle), std::sin(angle));
  double farthest_mm = 0;
  for_each_cell(blank, z_mm, [&](Vec2 p, double) {
    farthest_mm = std::max(farthest_mm, std::abs(glm::dot(p - centroid, weak)));
  });
  return {s.area, least, farthest_mm > 0 ? least / farthest_mm : 0.0};
}

} // namespace

Vec2 Blank::low_mm() const { return plan_box(*this).low; }
Vec2 Blank::high_mm() const { return plan_box(*this).high; }

BlankSection Blank::section_at(double z_mm) const {
  const double grown_mm = allowance_mm + foot_mm(*this, z_mm);
  if (rounds.empty() && is_between(z_mm, z_bottom_mm, z_top_mm)) {
    if (shape == BlankShape::cylinder)
      return round_section(diameter_mm + 2 * grown_mm);
    if (shape == BlankShape::revolved)
      return round_section(2 * (profile_radius_mm(*this, z_mm) + grown_mm));
    if (shape == BlankShape::box)
      return box_section(size_mm + Vec2(2 * grown_mm));
  }
  return sampled_section(*this, z_mm);
}

BlankSection Blank::weakest_section() const {
  // Slimmer parts higher up bend little, because the force's lever over them is short.
  constexpr int kHeights = 8;
  const double from_mm = z_bottom_mm + elephant_foot_height_mm;
  const double to_mm = std::max(from_mm, 0.5 * (z_bottom_mm + z_top_mm));
  const auto height_mm = [&](int i) { return from_mm + (to_mm - from_mm) * (i + 0.5) / (kHeights + 1); };
  BlankSection weakest;
  for (int i = 0; i <= kHeights; ++i) {
    if (i > 0 && has_same_slice(height_mm(i - 1), height_mm(i)))
      continue;
    const BlankSection section = section_at(height_mm(i));
    if (section.area_mm2 > 0 &&
        (weakest.area_mm2 == 0 || section.second_moment_mm4 < weakest.second_moment_mm4))
      weakest = section;
  }
  return weakest;
}

double Blank::second_moment_mm4() const { return weakest_section().second_moment_mm4; }
double Blank::section_modulus_mm3() const { return weakest_section().section_modulus_mm3; }
double Blank::section_area_mm2() const { return weakest_section().area_mm2; }

} // namespace asperity
