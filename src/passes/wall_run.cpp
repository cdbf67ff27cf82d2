// Levels round a wall and what is common to their entries.
#include "wall_run.h"

#include "asperity/base/units.h"
#include "outline_walk.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace asperity {

namespace {

/// Distances kept are checked with this much for rounding [mm].
constexpr double kRounding_mm = 1e-6;
/// Places looked at along a straight way beside the wall.
constexpr int kLooks = 64;
/// Places nearer than this along the path are one [mm].
constexpr double kSamePlace_mm = 1e-6;

} // namespace

WallRun::WallRun(Planning &planning, Outline path, double kept_mm, std::vector<double> levels, Speeds speeds)
    : planning_(planning), pass_(planning.pass), route_(planning.route), path_(std::move(path)),
      kept_mm_(kept_mm), levels_(std::move(levels)), speeds_(speeds) {
  s_mm_ = level_start_mm(0);
  turn_ = turn_of(0);
}

double WallRun::level_start_mm(std::size_t level) const {
  const StartPlace &start = pass_.start;
  const double on_deg = static_cast<double>(level) * start.step_deg.value_or(0.0);
  if (!start.along_mm)
    return place_at_angle_mm(path_, pass_.centre, start.deg + on_deg);
  const double away_mm = pass_.side == Side::outside ? kept_mm_ : -kept_mm_;
  const Vec2 beside =
      pass_.outline.point(*start.along_mm) + away_mm * pass_.outline.outward_normal(*start.along_mm);
  return wrapped(place_nearest_mm(path_, beside) + on_deg / 360.0 * path_.length_mm(), path_.length_mm());
}

int WallRun::turn_of(std::size_t level) const {
  // With the spindle turning clockwise seen from above, climb keeps the material to the right of the feed:
  // clockwise round a part, counter-clockwise inside a hole.
  const int climb = pass_.side == Side::outside ? -1 : 1;
  switch (pass_.direction) {
  case CutDirection::climb:
    return climb;
  case CutDirection::conventional:
    return -climb;
  default:
    return level % 2 == 0 ? climb : -climb;
  }
}

Vec2 WallRun::free_side(double s_mm) const {
  return (pass_.side == Side::outside ? 1.0 : -1.0) * path_.outward_normal(s_mm);
}

bool WallRun::is_clear(Vec2 p) const {
  const double depth_mm = pass_.outline.depth_mm(p);
  return (pass_.side == Side::outside ? -depth_mm : depth_mm) >= kept_mm_ - kRounding_mm;
}

bool WallRun::is_clear(Vec2 from, Vec2 to) const {
  for (int i = 0; i <= kLooks; ++i)
    if (!is_clear(from + (to - from) * (static_cast<double>(i) / kLooks)))
      return false;
  return true;
}

bool WallRun::find_approach() {
  const Vec2 start = path_.point(s_mm_), away = free_side(s_mm_);
  approach_mm_ = pass_.entry.approach_mm.value_or(planning_.radius_mm());
  if (is_clear(start, start + approach_mm_ * away))
    return true;
  if (pass_.entry.approach_mm)
    return planning_.refuse(
        fmt::format("approach_mm = {:g} does not fit beside the start at X{:.2f} Y{:.2f}", approach_mm_,
                    start.x, start.y),
        "Give a smaller approach_mm (0 comes down on the path itself), or another start.");
  approach_mm_ = 0.0; // a narrow hole: down on the path itself
  return true;
}

void WallRun::approach(double z_mm) {
  const Vec2 start = path_.point(s_mm_);
  planning_.come_down(start + approach_mm_ * free_side(s_mm_));
  route_.line_to({start, planning_.heights.near_mm}, speeds_.feed_mm_per_min);
  planning_.plunge_to(z_mm);
}

void WallRun::leave() {
  const Vec2 out = route_.plan_at() + approach_mm_ * free_side(s_mm_);
  if (is_clear(route_.plan_at(), out))
    route_.line_to({out, route_.at().z}, speeds_.feed_mm_per_min);
  planning_.go_up();
}

void WallRun::go(double by_mm, double z_mm, double feed_mm_per_min) {
  route_.follow(stretch_of(path_, s_mm_, by_mm), z_mm, feed_mm_per_min, pass_.chord_mm);
  s_mm_ = wrapped(s_mm_ + by_mm, path_.length_mm());
}

void WallRun::travel_to(double s_mm) {
  const double by_mm = wrapped(turn_ * (s_mm - s_mm_), path_.length_mm());
  if (by_mm > kSamePlace_mm && path_.length_mm() - by_mm > kSamePlace_mm)
    go(turn_ * by_mm, route_.at().z, speeds_.feed_mm_per_min);
}

void WallRun::laps() {
  for (int i = 0; i <= speeds_.spring_laps; ++i) {
    if (i > 0)
      route_.note(fmt::format("spring lap {}", i));
    go(turn_ * path_.length_mm(), route_.at().z, speeds_.feed_mm_per_min);
  }
}

void WallRun::overlap() {
  if (pass_.overlap_mm > 0.0)
    go(turn_ * pass_.overlap_mm, route_.at().z, speeds_.feed_mm_per_min);
}

bool WallRun::is_bounded() const {
  const double slope = std::tan(rad_from_deg(pass_.entry.ramp_deg));
  const double ramps_mm = slope > 0.0 ? (pass_.z_top_mm - pass_.z_bottom_mm) / slope : 0.0;
  const double leg_mm = pass_.entry.zigzag_mm > 0.0 ? pass_.entry.zigzag_mm : path_.length_mm();
  return planning_.is_few(static_cast<double>(levels_.size()), "levels") &&
         planning_.is_few(ramps_mm / leg_mm, "laps of ramps");
}

bool WallRun::run() {
  if (!is_bounded())
    return false;
  planning_.levels += levels_.size();
  switch (pass_.entry.kind) {
  case EntryKind::plunge:
    return plunge_levels();
  case EntryKind::ramp:
    return ramp_levels();
  case EntryKind::helix:
    return lap_levels();
  case EntryKind::zigzag:
    return pass_.entry.zigzag_mm > 0.0 ? ramp_levels() : lap_levels();
  default:
    return arc_levels();
  }
}

} // namespace asperity
