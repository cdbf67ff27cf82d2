// Features that two jobs have in common, by name and geometry.
#include "asperity/compare/difference_chart.h"

#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// Drawn sizes nearer than this are the same: a hundredth of what a chart resolves.
constexpr double kSameSize_mm = 1e-6;

bool is_near(double a, double b) { return std::abs(a - b) <= kSameSize_mm; }
bool is_near(Vec2 a, Vec2 b) { return is_near(a.x, b.x) && is_near(a.y, b.y); }

bool is_same(const Outline &a, const Outline &b) {
  if (a.elements().size() != b.elements().size())
    return false;
  for (std::size_t i = 0; i < a.elements().size(); ++i) {
    const OutlineElement &p = a.elements()[i], &q = b.elements()[i];
    if (!is_near(p.begin, q.begin) || !is_near(p.end, q.end) || !is_near(p.sweep_rad, q.sweep_rad) ||
        !is_near(p.centre, q.centre))
      return false;
  }
  return true;
}

bool is_same(const WallFeature &a, const WallFeature &b) {
  return a.side == b.side && is_near(a.z_bottom_mm, b.z_bottom_mm) && is_near(a.z_top_mm, b.z_top_mm) &&
         is_same(a.outline, b.outline);
}

bool is_same(const FloorFeature &a, const FloorFeature &b) {
  if (!is_near(a.z_mm, b.z_mm) || !is_same(a.outline, b.outline) || a.islands.size() != b.islands.size())
    return false;
  for (std::size_t i = 0; i < a.islands.size(); ++i)
    if (!is_same(a.islands[i], b.islands[i]))
      return false;
  return true;
}

/// Meshes are told apart by the charts' wanted heights; see difference_chart.
bool is_same(const DomeFeature &a, const DomeFeature &b) {
  if (a.surface.has_value() != b.surface.has_value() || !is_same(a.outline, b.outline))
    return false;
  return a.surface || (is_near(a.centre, b.centre) && is_near(a.sphere_radius_mm, b.sphere_radius_mm) &&
                       is_near(a.apex_z_mm, b.apex_z_mm) && is_near(a.rim_radius_mm, b.rim_radius_mm));
}

bool is_same_geometry(const Feature &a, const Feature &b) {
  return std::visit(
      [&](const auto &one) {
        const auto *two = std::get_if<std::decay_t<decltype(one)>>(&b);
        return two && is_same(one, *two);
      },
      a);
}

} // namespace

FeaturePairs feature_pairs(const Job &first, const Job &other) {
  FeaturePairs found;
  std::vector<bool> is_taken(other.features.size(), false);
  for (std::size_t i = 0; i < first.features.size(); ++i) {
    bool has_name = false, is_paired = false;
    for (std::size_t k = 0; k < other.features.size() && !is_paired; ++k) {
      if (is_taken[k] || name_of(first.features[i]) != name_of(other.features[k]))
        continue;
      has_name = true;
      if (!is_same_geometry(first.features[i], other.features[k]))
        continue;
      found.pairs.push_back({i, k});
      is_taken[k] = is_paired = true;
    }
    if (has_name && !is_paired)
      found.left_out.push_back(fmt::format(
          "{}: drawn differently in the two jobs, so its surfaces are not set against each other.",
          name_of(first.features[i])));
  }
  return found;
}

} // namespace asperity
