// Passes over a floor: levels, rings and spirals, and the check that nothing is left standing.
#include "asperity/base/units.h"
#include "asperity/passes/outline_offset.h"
#include "floor_run.h"
#include "outline_walk.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Less than this left standing is the edge of the places looked at.
constexpr double kMostUncut = 0.0005;
/// A lap this near to another is the same lap [mm].
constexpr double kSameLap_mm = 1e-3;
constexpr std::size_t kMostRings = 5000;
constexpr int kLooks = 180;

/// The common centre of a floor bounded by one circle.
std::optional<Vec2> centre_of_circle(const Outline &outline) {
  const Vec2 centre = outline.elements().front().centre;
  for (const OutlineElement &element : outline.elements())
    if (!element.is_arc() || glm::distance(element.centre, centre) > 1e-6)
      return std::nullopt;
  return centre;
}

bool is_same_lap(const Outline &a, const Outline &b) {
  for (int i = 0; i < kLooks; ++i) {
    const Vec2 p = a.point(a.length_mm() * i / kLooks);
    if (std::abs(b.depth_mm(p)) > kSameLap_mm)
      return false;
  }
  return true;
}

bool clears_islands(const FloorRegion &region, const Outline &path) {
  const int looks = std::clamp(static_cast<int>(path.length_mm() / 0.1), kLooks, 20000);
  for (int i = 0; i < looks; ++i)
    if (!region.clears_islands(path.point(path.length_mm() * i / looks)))
      return false;
  return true;
}

} // namespace

int FloorRun::turn_of(std::size_t ring) const {
  const int climb = pass_.order == RingOrder::inwards ? -1 : 1;
  if (pass_.direction == CutDirection::both)
    return ring % 2 == 0 ? climb : -climb;
  return pass_.direction == CutDirection::climb ? climb : -climb;
}

double FloorRun::approach_mm() const {
  return pass_.edge == FloorEdge::wall ? 0.0 : pass_.entry.approach_mm.value_or(planning_.radius_mm() + 1.0);
}

void FloorRun::begin_at(Vec2 p, Vec2 outward, double z_mm) {
  const bool from_outside = pass_.pattern == Pattern::parallel || pass_.order == RingOrder::inwards;
  planning_.come_down(p + (from_outside ? approach_mm() : 0.0) * outward);
  const double down_mm = is_ramped() ? from_mm_ : z_mm;
  planning_.plunge_to(down_mm);
  route_.line_to({p, down_mm}, pass_.feed_mm_per_min);
}

int FloorRun::ramp_runs(double length_mm, double z_mm) const {
  const double slope = std::tan(rad_from_deg(pass_.entry.ramp_deg));
  return std::max(1, static_cast<int>(std::ceil((from_mm_ - z_mm) / (length_mm * slope) - 1e-9)));
}

void FloorRun::link_to(Vec2 p, double z_mm) {
  if (region_.clears(route_.plan_at(), p)) {
    route_.line_to({p, z_mm}, pass_.feed_mm_per_min);
    return;
  }
  planning_.go_up();
  planning_.come_down(p);
  planning_.plunge_to(z_mm);
}

std::vector<Outline> FloorRun::ring_paths() const {
  // From the edge inwards, until nothing is left or an island is in the way.
  std::vector<Outline> paths;
  const double first_mm = pass_.edge == FloorEdge::open ? pass_.past_edge_mm : -planning_.radius_mm();
  for (std::size_t i = 0; i < kMostRings; ++i) {
    const OffsetOutline next =
        offset_outline(floor_.outline, first_mm - static_cast<double>(i) * pass_.stepover_mm);
    if (!next.path || !clears_islands(region_, *next.path))
      break;
    paths.push_back(*next.path);
  }
  return paths;
}

void FloorRun::ring(const Outline &path, int turn, double z_mm, bool is_first) {
  const double s_mm = place_at_angle_mm(path, middle(), pass_.start.deg);
  if (is_first)
    begin_at(path.point(s_mm), path.outward_normal(s_mm), z_mm);
  else
    link_to(path.point(s_mm), z_mm);
  const int runs = is_first && is_ramped() ? ramp_runs(path.length_mm(), z_mm) : 0;
  for (int i = 1; i <= runs; ++i)
    route_.follow(stretch_of(path, s_mm, turn * path.length_mm()), from_mm_ + (z_mm - from_mm_) * i / runs,
                  pass_.ramp_feed_mm_per_min, pass_.chord_mm);
  route_.follow(stretch_of(path, s_mm, turn * path.length_mm()), z_mm, pass_.feed_mm_per_min, pass_.chord_mm);
}

void FloorRun::edge_laps(double z_mm, bool with_outer, const std::vector<Outline> &done) {
  const auto is_done = [&done](const Outline &lap) {
    return std::any_of(done.begin(), done.end(),
                       [&](const Outline &other) { return is_same_lap(lap, other); });
  };
  // Beside a wall climb keeps it to the right: counter-clockwise inside, clockwise round an island.
  const int climb = pass_.direction == CutDirection::conventional ? -1 : 1;
  if (with_outer && !is_done(region_.outer()))
    ring(region_.outer(), climb, z_mm, false);
  for (const Outline &island : region_.islands())
    if (!is_done(island))
      ring(island, -climb, z_mm, false);
}

bool FloorRun::rings(double z_mm) {
  std::vector<Outline> paths = ring_paths();
  if (paths.empty())
    return planning_.refuse("no ring fits: an island lies too near to the floor's edge",
                            "Choose pattern = \"parallel\", which goes round islands.");
  if (pass_.order == RingOrder::outwards)
    std::reverse(paths.begin(), paths.end());
  for (std::size_t i = 0; i < paths.size(); ++i)
    ring(paths[i], turn_of(i), z_mm, i == 0);
  edge_laps(z_mm, false, paths);
  return true;
}

bool FloorRun::spiral(double z_mm) {
  const auto centre = centre_of_circle(region_.outer());
  const auto &islands = region_.islands();
  const auto island = islands.empty() ? centre : centre_of_circle(islands.front());
  if (!centre || !island || islands.size() > 1 || glm::distance(*centre, *island) > 1e-6)
    return planning_.refuse("a spiral needs a round floor, with at most one round island in its middle",
                            "Choose pattern = \"outline_parallel\" or \"parallel\".");
  const auto radius = [](const Outline &circle) { return circle.elements().front().radius_mm(); };
  const double outer_mm = radius(region_.outer()), inner_mm = islands.empty() ? 0.0 : radius(islands.front());
  const auto turns = std::max(1.0, std::ceil((outer_mm - inner_mm) / pass_.stepover_mm - 1e-9));
  const bool inwards = pass_.order == RingOrder::inwards;
  const double angle = rad_from_deg(pass_.start.deg);
  const Vec2 axis{std::cos(angle), std::sin(angle)};
  const double half = turn_of(0) * kPi;
  const double r_mm = inwards ? outer_mm : inner_mm;
  if (is_ramped() && r_mm <= 0.0)
    return planning_.refuse("a spiral that begins in the middle has no room for a ramp",
                            "Choose order = \"inwards\" or entry = \"plunge\".");
  begin_at(*centre + r_mm * axis, axis, z_mm);
  const int runs = is_ramped() ? ramp_runs(2.0 * kPi * r_mm, z_mm) : 0;
  for (int i = 1; i <= runs; ++i)
    route_.arc_to({route_.plan_at(), from_mm_ + (z_mm - from_mm_) * i / runs}, *centre, 2.0 * half,
                  pass_.ramp_feed_mm_per_min);
  spiral_turns({*centre, axis, half}, r_mm, inwards ? inner_mm : outer_mm, static_cast<int>(turns));
  return true;
}

void FloorRun::spiral_turns(const SpiralPlace &place, double from_mm, double to_mm, int turns) {
  const double z_mm = route_.at().z, half_step_mm = (to_mm - from_mm) / (2.0 * turns);
  const auto circle = [&](double r_mm) {
    if (r_mm > 0.0)
      route_.arc_to(route_.at(), place.centre, 2.0 * place.half_turn_rad, pass_.feed_mm_per_min);
  };
  // Half circles whose centres change sides, a quarter of the pitch beside the middle: they meet without a
  // kink, and neighbouring turns lie one pitch apart everywhere.
  circle(from_mm);
  for (int i = 0; i < 2 * turns; ++i) {
    const double side = i % 2 == 0 ? 1.0 : -1.0;
    const double next_mm = std::max(0.0, from_mm + (i + 1) * half_step_mm);
    const Vec2 middle = place.centre - 0.5 * side * half_step_mm * place.axis;
    route_.arc_to({place.centre - side * next_mm * place.axis, z_mm}, middle, place.half_turn_rad,
                  pass_.feed_mm_per_min);
  }
  circle(to_mm);
}

bool FloorRun::run(double from_mm, double z_mm) {
  ++planning_.levels;
  from_mm_ = from_mm;
  switch (pass_.pattern) {
  case Pattern::parallel:
    return lines(z_mm);
  case Pattern::outline_parallel:
    return rings(z_mm);
  default:
    return spiral(z_mm);
  }
}

bool plan_floor(Planning &planning) {
  const PlannedPass &pass = planning.pass;
  const auto &floor = std::get<FloorFeature>(planning.job.features[pass.feature]);
  if (pass.stepover_mm > planning.cutter.diameter_mm)
    return planning.refuse(
        fmt::format("stepover_mm is {:g}, more than the cutter's diameter {:g}: ridges would stand",
                    pass.stepover_mm, planning.cutter.diameter_mm),
        "Make stepover_mm smaller than the diameter.");
  const double levels = pass.stepdown_mm > 0.0 ? (pass.z_top_mm - pass.z_bottom_mm) / pass.stepdown_mm : 1.0;
  const double across_mm = glm::distance(floor.outline.low(), floor.outline.high());
  if (!planning.is_few(std::max(levels, 1.0) * across_mm / pass.stepover_mm, "lines or rings"))
    return false;
  const auto region = FloorRegion::of(planning, floor);
  if (!region)
    return false;
  FloorRun run(planning, floor, *region);
  std::size_t last = 0;
  double from_mm = std::min(pass.z_top_mm, planning.heights.near_mm);
  for (const double z_mm :
       level_heights(pass.z_top_mm, pass.z_bottom_mm, pass.stepdown_mm, pass.last_level)) {
    last = planning.route.strokes().size();
    planning.route.note(fmt::format("level Z{:.3f} of the part", z_mm));
    if (!run.run(from_mm, z_mm))
      return false;
    planning.go_up();
    from_mm = z_mm;
  }
  Vec2 place{0.0};
  const double uncut = region->uncut_share(std::span(planning.route.strokes()).subspan(last), place);
  if (uncut > kMostUncut)
    return planning.refuse(fmt::format("{:.1f} % of the floor would be left standing, as at X{:.2f} Y{:.2f}",
                                       100.0 * uncut, place.x, place.y),
                           "Make stepover_mm smaller or past_edge_mm larger; with islands choose pattern = "
                           "\"parallel\".");
  return true;
}

} // namespace asperity
