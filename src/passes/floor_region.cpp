// Where the cutter's axis may be on a floor.
#include "floor_region.h"

#include "asperity/passes/outline_offset.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kRounding_mm = 1e-6;
/// Places looked at along a straight way lie this close [mm].
constexpr double kLookStep_mm = 0.1;
/// Places of the floor looked at, each way.
constexpr int kFloorLooks = 120;
/// A sharp corner of 90 degrees hides (sqrt 2 - 1) of the radius; beside walls less than this is not asked
/// for.
constexpr double kCornerShare = 0.42;

} // namespace

std::optional<FloorRegion> FloorRegion::of(const Planning &planning, const FloorFeature &floor) {
  const PlannedPass &pass = planning.pass;
  FloorRegion region;
  region.floor_ = &floor;
  region.edge_ = pass.edge;
  region.radius_mm_ = planning.radius_mm();
  region.gap_mm_ = pass.island_gap_mm;
  region.island_mm_ = planning.radius_mm() + pass.island_gap_mm;
  const double outward_mm = pass.edge == FloorEdge::open ? pass.past_edge_mm : -planning.radius_mm();
  const OffsetOutline outer = offset_outline(floor.outline, outward_mm);
  if (!outer.path) {
    planning.refuse(
        fmt::format("the cutter does not fit: near X{:.2f} Y{:.2f} the floor is narrower than its "
                    "path needs",
                    outer.tightest.x, outer.tightest.y),
        pass.edge == FloorEdge::open ? "Change past_edge_mm." : "Take a thinner cutter.");
    return std::nullopt;
  }
  region.outer_ = *outer.path;
  for (const Outline &island : floor.islands) {
    const OffsetOutline grown = offset_outline(island, std::max(region.island_mm_, 0.0));
    if (!grown.path) {
      planning.refuse(fmt::format("the cutter does not fit beside an island near X{:.2f} Y{:.2f}",
                                  grown.tightest.x, grown.tightest.y),
                      "Take a thinner cutter, or change island_gap_mm.");
      return std::nullopt;
    }
    region.islands_.push_back(*grown.path);
  }
  return region;
}

bool FloorRegion::clears_islands(Vec2 p) const {
  return std::all_of(floor_->islands.begin(), floor_->islands.end(),
                     [&](const Outline &island) { return -island.depth_mm(p) >= island_mm_ - kRounding_mm; });
}

bool FloorRegion::clears(Vec2 p) const {
  const bool is_inside = edge_ == FloorEdge::open || floor_->outline.depth_mm(p) >= radius_mm_ - kRounding_mm;
  return is_inside && clears_islands(p);
}

bool FloorRegion::clears(Vec2 from, Vec2 to) const {
  const int looks = std::max(2, static_cast<int>(std::ceil(glm::distance(from, to) / kLookStep_mm)));
  for (int i = 0; i <= looks; ++i)
    if (!clears(from + (to - from) * (static_cast<double>(i) / looks)))
      return false;
  return true;
}

bool FloorRegion::must_be_cut(Vec2 p) const {
  const double margin_mm = edge_ == FloorEdge::wall ? kCornerShare * radius_mm_ : kRounding_mm;
  if (floor_->outline.depth_mm(p) < margin_mm)
    return false;
  return std::all_of(floor_->islands.begin(), floor_->islands.end(), [&](const Outline &island) {
    return -island.depth_mm(p) > std::max(gap_mm_, 0.0) + kRounding_mm;
  });
}

double FloorRegion::uncut_share(std::span<const PassStroke> strokes, Vec2 &place) const {
  std::vector<OutlineElement> cuts;
  for (const PassStroke &stroke : strokes)
    if (stroke.cuts() && stroke.begin.z == stroke.end.z)
      cuts.push_back(stroke.plan_view());
  const Vec2 low = floor_->outline.low(), size = floor_->outline.high() - low;
  std::size_t asked = 0, uncut = 0;
  for (int i = 0; i < kFloorLooks; ++i)
    for (int k = 0; k < kFloorLooks; ++k) {
      const Vec2 p = low + size * Vec2((i + 0.5) / kFloorLooks, (k + 0.5) / kFloorLooks);
      if (!must_be_cut(p))
        continue;
      ++asked;
      const bool is_cut = std::any_of(cuts.begin(), cuts.end(), [&](const OutlineElement &cut) {
        return cut.distance_mm(p) <= radius_mm_ + kRounding_mm;
      });
      if (is_cut)
        continue;
      ++uncut;
      place = p;
    }
  return asked > 0 ? static_cast<double>(uncut) / static_cast<double>(asked) : 0.0;
}

} // namespace asperity
