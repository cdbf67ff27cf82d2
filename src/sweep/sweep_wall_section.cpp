// Reads bend nodes and profile at the heights a row meets, and splits where their laws change.
#include "sweep_wall_section.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Offset = (1-u)·B(h(u)) + u·E(h(u)), B and E linear in h, h linear in u: a parabola in u.
void set_offset(Section &section, double h_middle) {
  const auto side = static_cast<std::size_t>(section.side);
  const std::size_t interval = node_interval(section.cutter->node_height_mm, h_middle);
  const OffsetLaw b = offset_law(section.stroke->begin[side], section.cutter->node_height_mm, interval);
  const OffsetLaw e = offset_law(section.stroke->end[side], section.cutter->node_height_mm, interval);
  const Vec2 b0 = b.constant + section.h_begin_mm * b.slope, e0 = e.constant + section.h_begin_mm * e.slope;
  const Vec2 b1 = section.h_rise_mm * b.slope, e1 = section.h_rise_mm * e.slope;
  section.offset = b0;
  section.offset_slope = b1 - b0 + e0;
  section.offset_bend = e1 - b1;
  // A bend too small to matter becomes the chord between the section's ends.
  const double run = section.u1 - section.u0;
  if (section.offset_bend != Vec2(0.0) && glm::length(section.offset_bend) * run * run < 4.0 * kSame_mm) {
    section.offset -= section.u0 * section.u1 * section.offset_bend;
    section.offset_slope += (section.u0 + section.u1) * section.offset_bend;
    section.offset_bend = Vec2(0.0);
  }
}

void set_radius(Section &section, double h_middle) {
  const CutterProfile &profile = section.cutter->profile;
  section.radius_law = Section::RadiusLaw::steady;
  section.steady_radius_mm = profile.radius_at(h_middle);
  if (!section.stroke->has_varying_radius || h_middle >= profile.shoulder_mm())
    return;
  if (h_middle <= section.cutter->arc_end_mm) {
    section.radius_law = Section::RadiusLaw::arc;
    return;
  }
  section.radius_law = Section::RadiusLaw::cone;
  section.radius_slope = std::tan(profile.cone_half_angle_rad());
  section.steady_radius_mm -= h_middle * section.radius_slope;
}

void set_laws(Section &section) {
  const double h_middle = section.h_begin_mm + 0.5 * (section.u0 + section.u1) * section.h_rise_mm;
  set_offset(section, h_middle);
  set_radius(section, h_middle);
  const bool is_steady = section.radius_law == Section::RadiusLaw::steady;
  section.is_straight = is_steady && !section.stroke->is_arc && section.offset_bend == Vec2(0.0);
  section.is_round = is_steady && section.stroke->is_arc && section.offset_bend == Vec2(0.0) &&
                     glm::length(section.offset_slope) * (section.u1 - section.u0) < kSame_mm;
  if (section.is_round) {
    section.offset += 0.5 * (section.u0 + section.u1) * section.offset_slope;
    section.offset_slope = Vec2(0.0);
  }
}

void add(SectionList &sections, Section section, double u0, double u1) {
  if (sections.count == kMostSections || !(u1 > u0))
    return;
  section.u0 = u0;
  section.u1 = u1;
  set_laws(section);
  sections.all[sections.count++] = section;
}

} // namespace

std::size_t node_interval(const std::array<double, kBendNodes> &height, double h) {
  std::size_t i = 0;
  while (i < kBendNodes && h > height[i])
    ++i;
  return i;
}

OffsetLaw offset_law(const BendNodes &node, const std::array<double, kBendNodes> &height,
                     std::size_t interval) {
  if (interval == 0)
    return {node.front(), Vec2(0.0)};
  if (interval == kBendNodes)
    return {node.back(), Vec2(0.0)};
  const double run = height[interval] - height[interval - 1];
  const Vec2 slope = run > 0.0 ? (node[interval] - node[interval - 1]) / run : Vec2(0.0);
  return {node[interval - 1] - height[interval - 1] * slope, slope};
}

Vec2 Section::centre_at(double u) const {
  const Vec2 shift = offset + u * (offset_slope + u * offset_bend);
  return stroke->plan_point(u) + shift;
}

double Section::radius_at(double u) const {
  const double h = h_begin_mm + u * h_rise_mm;
  switch (radius_law) {
  case RadiusLaw::steady:
    return steady_radius_mm;
  case RadiusLaw::cone:
    return steady_radius_mm + radius_slope * h;
  case RadiusLaw::arc:
    break;
  }
  const double corner = cutter->profile.corner_mm();
  return cutter->profile.tip_flat_mm() + std::sqrt(std::max(0.0, h * (2.0 * corner - h)));
}

Disc Section::at(double u) const {
  Disc disc;
  disc.velocity = offset_slope + 2.0 * u * offset_bend;
  disc.bend = 2.0 * offset_bend;
  const Vec2 shift = offset + u * (offset_slope + u * offset_bend);
  if (stroke->is_arc) {
    const double rate = 2.0 * stroke->half_sweep_rad;
    const Vec2 arm = stroke->arm(u);
    disc.centre = stroke->centre + arm + shift;
    disc.velocity += rate * left_of(arm);
    disc.bend -= rate * rate * arm;
  } else {
    disc.centre = stroke->from + u * stroke->along + shift;
    disc.velocity += stroke->along;
  }
  disc.radius_mm = steady_radius_mm;
  if (radius_law == RadiusLaw::cone) {
    disc.radius_mm += radius_slope * (h_begin_mm + u * h_rise_mm);
    disc.growth = radius_slope * h_rise_mm;
  } else if (radius_law == RadiusLaw::arc) {
    // Radius = flat + x, x² = h (2·corner - h); the tiny least h keeps the infinite slope at the tip a
    // number.
    const double corner = cutter->profile.corner_mm();
    const double h = std::max(h_begin_mm + u * h_rise_mm, 1e-14);
    const double x = std::sqrt(std::max(h * (2.0 * corner - h), 1e-28));
    disc.radius_mm = cutter->profile.tip_flat_mm() + x;
    disc.growth = h_rise_mm * (corner - h) / x;
    disc.growth_bend = -h_rise_mm * h_rise_mm * corner * corner / (x * x * x);
  }
  return disc;
}

void find_sections(const Stroke &stroke, const WallCutter &cutter, WallSide side, double z_mm,
                   SectionList &sections) {
  sections.count = 0;
  Section section;
  section.stroke = &stroke;
  section.cutter = &cutter;
  section.side = side;
  section.h_begin_mm = z_mm - stroke.z_begin_mm;
  section.h_rise_mm = -stroke.z_rise_mm;
  const double h0 = section.h_begin_mm, h1 = h0 + section.h_rise_mm;
  if (std::max(h0, h1) < cutter.lowest_mm || std::min(h0, h1) > cutter.highest_mm)
    return;
  if (stroke.z_rise_mm == 0.0) {
    add(sections, section, 0.0, 1.0);
    return;
  }

  // The part of the stroke that reaches the row.
  const auto u_at = [&](double h) { return std::clamp((h - h0) / section.h_rise_mm, 0.0, 1.0); };
  const double u_lowest = u_at(cutter.lowest_mm), u_highest = u_at(cutter.highest_mm);
  const double begin = std::min(u_lowest, u_highest), end = std::max(u_lowest, u_highest);

  // Split where offset or radius change their law.
  double from = begin;
  const std::size_t breaks = cutter.break_mm.size();
  for (std::size_t i = 0; i < breaks; ++i) {
    const double h = section.h_rise_mm > 0.0 ? cutter.break_mm[i] : cutter.break_mm[breaks - 1 - i];
    const double u = (h - h0) / section.h_rise_mm;
    if (u > from && u < end) {
      add(sections, section, from, u);
      from = u;
    }
  }
  add(sections, section, from, end);
}

} // namespace asperity
