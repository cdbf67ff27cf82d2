// The plain solids of a job.
#include "solids.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kBoard_mm = 4.0;     ///< thickness shown of the spoilboard
constexpr double kBoardMargin = 0.05; ///< of the work's width
constexpr double kStanding_mm = 0.01;
constexpr int kProfileSteps = 24;

std::vector<Loop> holes_through(const Blank &blank, double z_mm) {
  std::vector<Loop> holes;
  for (const RoundFeature &round : blank.rounds)
    if (round.is_hole && round.z_bottom_mm <= z_mm && round.z_top_mm >= z_mm - 1e-9)
      holes.push_back(circle_loop(round.centre, round.diameter_mm));
  return holes;
}

std::vector<Loop> with_holes(Loop outer, const Blank &blank, double z_mm) {
  std::vector<Loop> loops{std::move(outer)};
  for (Loop &hole : holes_through(blank, z_mm))
    loops.push_back(std::move(hole));
  return loops;
}

Loop plan_of(const Blank &blank) {
  if (blank.shape == BlankShape::cylinder)
    return circle_loop(blank.centre, blank.diameter_mm + 2.0 * blank.allowance_mm);
  if (blank.shape == BlankShape::box)
    return box_loop(blank.centre, blank.size_mm + Vec2(2.0 * blank.allowance_mm));
  return loop_of(blank.grown_from, blank.allowance_mm);
}

/// A floor or dome that looks up from somewhere inside the outline.
bool is_covered(const Job &job, const Outline &outline) {
  return std::any_of(job.features.begin(), job.features.end(), [&](const Feature &feature) {
    const Outline *other = nullptr;
    if (const auto *floor = std::get_if<FloorFeature>(&feature))
      other = &floor->outline;
    else if (const auto *dome = std::get_if<DomeFeature>(&feature))
      other = &dome->outline;
    return other && outline.contains(0.5 * (other->low() + other->high()));
  });
}

bool has_dome_in(const Job &job, const Outline &island) {
  return std::any_of(job.features.begin(), job.features.end(), [&](const Feature &feature) {
    const auto *dome = std::get_if<DomeFeature>(&feature);
    return dome && island.contains(0.5 * (dome->outline.low() + dome->outline.high()));
  });
}

void add_wall_ends(SolidShape &shape, const Job &job, const WallFeature &wall) {
  if (wall.side != Side::outside)
    return;
  std::vector<Loop> loops = with_holes(loop_of(wall.outline), job.blank, wall.z_bottom_mm);
  for (const Feature &feature : job.features)
    if (const auto *inner = std::get_if<WallFeature>(&feature);
        inner && inner->side == Side::inside && wall.outline.contains(inner->outline.point(0.0)))
      loops.push_back(loop_of(inner->outline));
  // On the spoilboard nothing is seen from below, and a wall drawn too far in would bare the face's edge.
  const bool stands_on_board =
      job.holding.spoilboard_top_z_mm && *job.holding.spoilboard_top_z_mm >= wall.z_bottom_mm - kStanding_mm;
  if (!stands_on_board)
    shape.add_cap(loops, wall.z_bottom_mm, false);
  if (!is_covered(job, wall.outline))
    shape.add_cap(loops, wall.z_top_mm);
}

} // namespace

SolidShape blank_solid(const Blank &blank) {
  SolidShape shape;
  if (blank.shape == BlankShape::mesh) {
    shape.add_mesh(blank.mesh.mesh());
    return shape;
  }
  if (blank.shape == BlankShape::revolved) {
    std::vector<Vec2> profile = blank.profile_mm;
    for (Vec2 &p : profile)
      p.x += blank.allowance_mm;
    if (!profile.empty()) {
      profile.insert(profile.begin(), {0.0, profile.front().y});
      profile.push_back({0.0, profile.back().y});
    }
    shape.add_turned(profile, {blank.centre, 0.0});
  } else {
    shape.add_prism(with_holes(plan_of(blank), blank, blank.z_top_mm), blank.z_bottom_mm, blank.z_top_mm);
  }
  for (const RoundFeature &round : blank.rounds)
    if (!round.is_hole)
      shape.add_prism({circle_loop(round.centre, round.diameter_mm)}, round.z_bottom_mm, round.z_top_mm);
  return shape;
}

SolidShape rest_of_part(const Job &job) {
  SolidShape shape;
  double top_mm = job.blank.z_top_mm;
  for (const Feature &feature : job.features) {
    if (const auto *wall = std::get_if<WallFeature>(&feature))
      add_wall_ends(shape, job, *wall);
    const auto *floor = std::get_if<FloorFeature>(&feature);
    if (!floor)
      continue;
    top_mm = std::min(top_mm, std::max(floor->z_mm, job.blank.z_bottom_mm));
    for (const Outline &island : floor->islands) {
      const double island_top = job.blank.top_mm(island.point(0.0)).value_or(job.blank.z_top_mm);
      if (island_top <= floor->z_mm || has_dome_in(job, island))
        continue;
      shape.add_sides(loop_of(island), floor->z_mm, island_top);
      shape.add_cap(with_holes(loop_of(island), job.blank, island_top), island_top);
    }
  }
  for (const RoundFeature &round : job.blank.rounds)
    if (round.is_hole)
      shape.add_sides(circle_loop(round.centre, round.diameter_mm), round.z_bottom_mm,
                      std::min(round.z_top_mm, job.blank.z_top_mm), false);
  return shape;
}

SolidShape holding_solid(const HoldDown &holding, const Blank &blank) {
  SolidShape shape;
  const double board = holding.spoilboard_top_z_mm.value_or(blank.z_bottom_mm);
  for (const KeepOut &keep_out : holding.keep_outs) {
    // A bolt's head stands on the blank where there is one, a clamp reaches down to the board.
    const double foot =
        keep_out.is_round
            ? blank.top_mm(keep_out.centre + Vec2(0.45 * keep_out.diameter_mm, 0.0)).value_or(board)
            : board;
    const Loop loop = keep_out.is_round ? circle_loop(keep_out.centre, keep_out.diameter_mm)
                                        : box_loop(keep_out.centre, keep_out.size_mm);
    shape.add_prism({loop}, std::min(foot, keep_out.z_top_mm - 0.5), keep_out.z_top_mm);
  }
  return shape;
}

SolidShape spoilboard_solid(const HoldDown &holding, Vec2 low_mm, Vec2 high_mm) {
  SolidShape shape;
  if (!holding.spoilboard_top_z_mm)
    return shape;
  const Vec2 size = high_mm - low_mm;
  const double margin = kBoardMargin * std::max(size.x, size.y);
  const double top = *holding.spoilboard_top_z_mm;
  shape.add_prism({box_loop(0.5 * (low_mm + high_mm), size + Vec2(2.0 * margin))}, top - kBoard_mm, top);
  return shape;
}

SolidShape cutter_solid(const Cutter &cutter) {
  const CutterProfile profile = cutter.profile();
  std::vector<Vec2> outline{{0.0, 0.0}, {profile.tip_flat_mm(), 0.0}};
  for (int k = 1; k <= kProfileSteps; ++k) {
    // Closer together near the tip, where a corner turns.
    const double share = static_cast<double>(k) / kProfileSteps;
    const double h = profile.shoulder_mm() * share * share;
    if (h > 0.0)
      outline.push_back({profile.radius_at(h), h});
  }
  outline.push_back({profile.radius_mm(), profile.shoulder_mm()});
  outline.push_back({profile.radius_mm(), std::max(cutter.flute_length_mm, profile.shoulder_mm())});
  const double shank = cutter.shank_diameter_mm > 0.0 ? 0.5 * cutter.shank_diameter_mm : profile.radius_mm();
  outline.push_back({shank, outline.back().y});
  outline.push_back({shank, std::max(cutter.stick_out_mm, outline.back().y)});
  outline.push_back({0.0, outline.back().y});
  SolidShape shape;
  shape.add_turned(outline, Vec3(0.0));
  return shape;
}

} // namespace asperity
