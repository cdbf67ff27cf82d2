// How deep a point lies in the blank's plan slice, and how high the blank stands over a point.
#include "blank_slice.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kFirstSlice_mm = 1e-6;

/// Axis-parallel rectangle with sharp corners: outside, the distance is measured to the corner.
double rectangle_depth_mm(Vec2 from_centre, Vec2 half_mm) {
  const Vec2 past = glm::abs(from_centre) - half_mm;
  const Vec2 outside(std::max(past.x, 0.0), std::max(past.y, 0.0));
  const double inside = std::min(std::max(past.x, past.y), 0.0);
  return -(glm::length(outside) + inside);
}

/// A mesh with allowance or foot reaches past its own silhouette: sought from the top down.
std::optional<double> grown_mesh_top_mm(const Blank &blank, Vec2 p) {
  constexpr int kSteps = 64;
  const double step_mm = (blank.z_top_mm - blank.z_bottom_mm) / kSteps;
  const auto depth = [&](double z) {
    return base_depth_mm(blank, p, z, blank.allowance_mm + foot_mm(blank, z));
  };
  for (int i = 0; i < kSteps; ++i) {
    // Half a step off the faces, where a slice may touch nothing but edges.
    double inside = blank.z_top_mm - (i + 0.5) * step_mm, outside = inside + step_mm;
    if (depth(inside) < 0)
      continue;
    if (i == 0)
      return blank.z_top_mm;
    while (outside - inside > kFace_mm) {
      const double middle = 0.5 * (inside + outside);
      (depth(middle) >= 0 ? inside : outside) = middle;
    }
    return inside;
  }
  return std::nullopt;
}

std::optional<double> mesh_top_mm(const Blank &blank, Vec2 p) {
  const auto top = blank.mesh.top_mm(p);
  const bool is_grown = blank.allowance_mm > 0 || blank.elephant_foot_mm > 0;
  const Vec2 low = blank.low_mm(), high = blank.high_mm();
  const bool is_near = p.x >= low.x && p.y >= low.y && p.x <= high.x && p.y <= high.y;
  return top || !is_grown || !is_near ? top : grown_mesh_top_mm(blank, p);
}

/// Heights at which a revolved blank reaches out to rho.
LineSpans revolved_heights(const Blank &blank, double rho) {
  LineSpans heights;
  for (std::size_t i = 1; i < blank.profile_mm.size(); ++i) {
    const Vec2 low = blank.profile_mm[i - 1], high = blank.profile_mm[i];
    const double over_low = low.x + blank.allowance_mm - rho, over_high = high.x + blank.allowance_mm - rho;
    if (over_low < 0 && over_high < 0)
      continue;
    const double crossing = low.y + (high.y - low.y) * over_low / (over_low - over_high);
    heights.add({over_low >= 0 ? low.y : crossing, over_high >= 0 ? high.y : crossing});
  }
  return heights;
}

/// How far p lies outside the base shape's bottom slice, in the sense in which that slice grows.
double short_of_mm(const Blank &blank, Vec2 p) {
  if (blank.shape != BlankShape::box)
    return -base_depth_mm(blank, p, blank.z_bottom_mm, blank.allowance_mm);
  const Vec2 past = glm::abs(p - blank.centre) - 0.5 * blank.size_mm;
  return std::max(past.x, past.y) - blank.allowance_mm;
}

/// Stretches of height over p at which the base shape is there.
LineSpans base_heights(const Blank &blank, Vec2 p) {
  LineSpans heights;
  if (blank.shape == BlankShape::mesh) {
    if (const auto top = mesh_top_mm(blank, p))
      heights.add({blank.z_bottom_mm, *top});
    return heights;
  }
  const double short_of = short_of_mm(blank, p);
  if (blank.shape == BlankShape::revolved)
    heights = revolved_heights(blank, glm::length(p - blank.centre));
  else if (short_of <= 0)
    heights.add({blank.z_bottom_mm, blank.z_top_mm});
  // The foot stands out only near the bottom.
  if (short_of > 0 && short_of <= foot_mm(blank, blank.z_bottom_mm))
    heights.add({blank.z_bottom_mm, foot_height_mm(blank, short_of)});
  return heights;
}

} // namespace

bool is_between(double z_mm, double bottom_mm, double top_mm) {
  return z_mm >= bottom_mm - kFace_mm && z_mm <= top_mm + kFace_mm;
}

double foot_mm(const Blank &blank, double z_mm) {
  if (blank.elephant_foot_mm <= 0 || blank.elephant_foot_height_mm <= 0)
    return 0;
  const double faded = std::max(z_mm - blank.z_bottom_mm, 0.0) / blank.elephant_foot_height_mm;
  return faded < 1 ? blank.elephant_foot_mm * (1 - faded) : 0.0;
}

double foot_height_mm(const Blank &blank, double extra_mm) {
  return blank.z_bottom_mm + blank.elephant_foot_height_mm * (1 - extra_mm / blank.elephant_foot_mm);
}

double profile_radius_mm(const Blank &blank, double z_mm) {
  const auto &profile = blank.profile_mm;
  if (profile.empty())
    return 0;
  const auto above =
      std::upper_bound(profile.begin(), profile.end(), z_mm, [](double z, Vec2 v) { return z < v.y; });
  if (above == profile.begin())
    return profile.front().x;
  if (above == profile.end())
    return profile.back().x;
  const Vec2 low = *(above - 1), high = *above;
  return low.x + (high.x - low.x) * (z_mm - low.y) / (high.y - low.y);
}

double base_depth_mm(const Blank &blank, Vec2 p, double z_mm, double grown_mm) {
  switch (blank.shape) {
  case BlankShape::cylinder:
    return 0.5 * blank.diameter_mm + grown_mm - glm::length(p - blank.centre);
  case BlankShape::box:
    return rectangle_depth_mm(p - blank.centre, 0.5 * blank.size_mm + Vec2(grown_mm));
  case BlankShape::revolved:
    return profile_radius_mm(blank, z_mm) + grown_mm - glm::length(p - blank.centre);
  case BlankShape::grown:
    return blank.grown_from.depth_mm(p) + grown_mm;
  case BlankShape::mesh:
    break;
  }
  // A slice just above the lowest point, where the mesh already encloses something; and no infinite depths.
  const double slice_z_mm = std::max(z_mm, blank.z_bottom_mm + kFirstSlice_mm);
  return std::max(blank.mesh.plan_depth_mm(p, std::min(slice_z_mm, blank.z_top_mm)) + grown_mm, kNowhere_mm);
}

double round_radius_mm(const Blank &blank, const RoundFeature &round, double z_mm) {
  return 0.5 * round.diameter_mm + (round.is_hole ? -1 : 1) * foot_mm(blank, z_mm);
}

double Blank::plan_depth_mm(Vec2 p, double z_mm) const {
  double depth = kNowhere_mm;
  if (is_between(z_mm, z_bottom_mm, z_top_mm))
    depth = base_depth_mm(*this, p, z_mm, allowance_mm + foot_mm(*this, z_mm));
  for (const RoundFeature &boss : rounds)
    if (!boss.is_hole && is_between(z_mm, boss.z_bottom_mm, boss.z_top_mm))
      depth = std::max(depth, round_radius_mm(*this, boss, z_mm) - glm::length(p - boss.centre));
  for (const RoundFeature &hole : rounds) {
    const double radius = round_radius_mm(*this, hole, z_mm);
    if (hole.is_hole && radius > 0 && is_between(z_mm, hole.z_bottom_mm, hole.z_top_mm))
      depth = std::min(depth, glm::length(p - hole.centre) - radius);
  }
  return depth;
}

bool Blank::has_same_slice(double z_mm, double other_z_mm) const {
  const auto both_or_none = [&](double bottom_mm, double top_mm) {
    return is_between(z_mm, bottom_mm, top_mm) == is_between(other_z_mm, bottom_mm, top_mm);
  };
  return shape != BlankShape::revolved && shape != BlankShape::mesh &&
         foot_mm(*this, z_mm) == foot_mm(*this, other_z_mm) && both_or_none(z_bottom_mm, z_top_mm) &&
         std::all_of(rounds.begin(), rounds.end(), [&](const RoundFeature &round) {
           return both_or_none(round.z_bottom_mm, round.z_top_mm);
         });
}

std::optional<double> Blank::top_mm(Vec2 p) const {
  LineSpans heights = base_heights(*this, p);
  for (const RoundFeature &boss : rounds)
    if (!boss.is_hole && 2 * glm::length(p - boss.centre) <= boss.diameter_mm)
      heights.add({boss.z_bottom_mm, boss.z_top_mm});

  // A hole takes the material above the rim that the foot leaves in it.
  for (const RoundFeature &hole : rounds) {
    const double inside = 0.5 * hole.diameter_mm - glm::length(p - hole.centre);
    if (!hole.is_hole || inside <= 0)
      continue;
    const bool over_rim = inside < foot_mm(*this, hole.z_bottom_mm);
    heights.cut({over_rim ? foot_height_mm(*this, inside) : hole.z_bottom_mm, hole.z_top_mm});
  }

  for (auto span = heights.all().rbegin(); span != heights.all().rend(); ++span)
    if (span->end - span->begin > kFace_mm)
      return span->end;
  return std::nullopt;
}

} // namespace asperity
