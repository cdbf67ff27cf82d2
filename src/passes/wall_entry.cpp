// Entries of levels round a wall: plunge, ramps, descending laps, tangent arc.
#include "asperity/base/units.h"
#include "outline_walk.h"
#include "wall_run.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

/// Places looked at along a lead arc.
constexpr int kArcLooks = 64;

Vec2 turned_about(Vec2 p, Vec2 centre, double by_rad) {
  const Vec2 a = p - centre;
  return centre + std::cos(by_rad) * a + std::sin(by_rad) * left_of(a);
}

std::string level_note(std::size_t level, double z_mm) {
  return fmt::format("level {}: Z{:.3f} of the part", level + 1, z_mm);
}

} // namespace

bool WallRun::plunge_levels() {
  if (!find_approach())
    return false;
  for (std::size_t i = 0; i < levels_.size(); ++i) {
    if (i > 0 && pass_.start.step_deg)
      travel_to(level_start_mm(i));
    turn_ = turn_of(i);
    route_.note(level_note(i, levels_[i]));
    if (i == 0)
      approach(levels_[i]);
    else
      planning_.plunge_to(levels_[i]);
    laps();
    overlap();
  }
  leave();
  return true;
}

void WallRun::zigzag_down(double z_mm) {
  const double from_mm = route_.at().z, stretch_mm = pass_.entry.zigzag_mm;
  const double most_mm = stretch_mm * std::tan(rad_from_deg(pass_.entry.ramp_deg));
  const auto legs = static_cast<int>(std::ceil((from_mm - z_mm) / most_mm - 1e-9));
  for (int i = 1; i <= legs; ++i)
    go((i % 2 == 1 ? turn_ : -turn_) * stretch_mm, from_mm + (z_mm - from_mm) * i / legs,
       pass_.ramp_feed_mm_per_min);
}

bool WallRun::ramp_levels() {
  if (!find_approach())
    return false;
  if (pass_.entry.zigzag_mm > path_.length_mm())
    return planning_.refuse(
        fmt::format("zigzag_mm is longer than the path round the wall, {:.2f} mm", path_.length_mm()),
        "Make it shorter; or leave it out, then whole laps descend.");
  approach(pass_.z_top_mm);
  for (std::size_t i = 0; i < levels_.size(); ++i) {
    if (i > 0 && pass_.start.step_deg)
      travel_to(level_start_mm(i));
    turn_ = turn_of(i);
    route_.note(level_note(i, levels_[i]));
    if (pass_.entry.kind == EntryKind::zigzag)
      zigzag_down(levels_[i]);
    else
      go(turn_ * (route_.at().z - levels_[i]) / std::tan(rad_from_deg(pass_.entry.ramp_deg)), levels_[i],
         pass_.ramp_feed_mm_per_min);
    laps();
    overlap();
  }
  leave();
  return true;
}

bool WallRun::lap_levels() {
  if (!find_approach())
    return false;
  approach(pass_.z_top_mm);
  for (const double z_mm : levels_) {
    go(turn_ * path_.length_mm(), z_mm, pass_.ramp_feed_mm_per_min);
    if (pass_.entry.kind == EntryKind::zigzag)
      turn_ = -turn_;
  }
  route_.note("level lap at the bottom");
  laps();
  overlap();
  leave();
  return true;
}

bool WallRun::lead_in(double z_mm, bool is_first) {
  const double r_mm = pass_.entry.lead_radius_mm;
  const Vec2 end = path_.point(s_mm_), free = free_side(s_mm_), centre = end + r_mm * free;
  const Vec2 travel = static_cast<double>(turn_) * left_of(path_.outward_normal(s_mm_));
  const double sweep = (cross(travel, free) > 0.0 ? 1.0 : -1.0) * rad_from_deg(pass_.entry.lead_deg);
  const Vec2 begin = turned_about(end, centre, -sweep);
  for (int i = 0; i <= kArcLooks; ++i)
    if (const Vec2 p = turned_about(begin, centre, sweep * i / kArcLooks); !is_clear(p))
      return planning_.refuse(
          fmt::format("the lead arc of {:g} mm does not fit: it would cut the wall at X{:.2f} "
                      "Y{:.2f}",
                      r_mm, p.x, p.y),
          "Make lead_radius_mm or lead_deg smaller, or begin elsewhere.");
  if (is_first || !is_clear(route_.plan_at(), begin))
    planning_.come_down(begin);
  else
    route_.line_to({begin, route_.at().z}, speeds_.feed_mm_per_min);
  planning_.plunge_to(z_mm);
  route_.arc_to({end, z_mm}, centre, sweep, speeds_.feed_mm_per_min);
  return true;
}

bool WallRun::lead_out() {
  const double r_mm = pass_.entry.lead_radius_mm;
  const Vec2 begin = path_.point(s_mm_), free = free_side(s_mm_), centre = begin + r_mm * free;
  const Vec2 travel = static_cast<double>(turn_) * left_of(path_.outward_normal(s_mm_));
  const double sweep = (cross(travel, free) > 0.0 ? 1.0 : -1.0) * rad_from_deg(pass_.entry.lead_deg);
  for (int i = 0; i <= kArcLooks; ++i)
    if (!is_clear(turned_about(begin, centre, sweep * i / kArcLooks)))
      return planning_.refuse("the arc out of the cut does not fit where the overlap ends",
                              "Make lead_radius_mm, lead_deg or overlap_mm smaller, or begin elsewhere.");
  route_.arc_to({turned_about(begin, centre, sweep), route_.at().z}, centre, sweep, speeds_.feed_mm_per_min);
  return true;
}

bool WallRun::arc_levels() {
  const double first_mm = s_mm_;
  for (std::size_t i = 0; i < levels_.size(); ++i) {
    // Out of the cut by an arc, a level may begin anywhere: at the same place unless it is stepped on.
    s_mm_ = pass_.start.step_deg ? level_start_mm(i) : first_mm;
    turn_ = turn_of(i);
    route_.note(level_note(i, levels_[i]));
    if (!lead_in(levels_[i], i == 0))
      return false;
    laps();
    overlap();
    if (!lead_out())
      return false;
  }
  planning_.go_up();
  return true;
}

} // namespace asperity
