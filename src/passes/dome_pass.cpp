// Passes over a dome: level rings, parallel lines, spirals, all with the cutter resting on the surface.
#include "asperity/base/units.h"
#include "asperity/passes/cutter_drop.h"
#include "crossings.h"
#include "planning.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// The surface is asked for the tip's height this often along a way [mm], but at least 30 times a radius.
constexpr double kLookStep_mm = 0.1;
/// Straight moves span at most so many places looked at.
constexpr std::size_t kMostSpan = 256;
constexpr double kRounding_mm = 1e-9;
/// A way longer than many of these would fill the memory with places to look at.
constexpr double kFarthestWay_mm = 50;

class DomeRun {
public:
  DomeRun(Planning &planning, const DomeFeature &dome)
      : planning_(planning), pass_(planning.pass), route_(planning.route), dome_(dome),
        profile_(planning.cutter.profile()), drop_(dome, profile_),
        step_mm_(std::min(kLookStep_mm, planning.radius_mm() / 30.0)) {}

  bool run();

private:
  bool levels();
  bool lines();
  bool spiral();
  std::optional<Vec3> tip(Vec2 p) const;
  /// The dome stands to the right of a climbing cutter: clockwise round it.
  double turn() const { return pass_.direction == CutDirection::conventional ? 1.0 : -1.0; }
  Vec2 at_angle(double r_mm, double rad) const {
    return dome_.centre + r_mm * Vec2(std::cos(rad), std::sin(rad));
  }
  bool begin_at(Vec2 p);
  /// Straight in plan, up and down with the surface.
  void follow_to(Vec2 p);
  void follow(const std::vector<Vec2> &way);
  std::vector<Vec2> straight(Vec2 from, Vec2 to) const;
  double reach_mm() const { return dome_.sphere_radius_mm + profile_.corner_mm(); }
  double rest_radius_mm() const; ///< a round outline's radius for the axis

  Planning &planning_;
  const PlannedPass &pass_;
  Route &route_;
  const DomeFeature &dome_;
  CutterProfile profile_;
  CutterDrop drop_;
  double step_mm_;
};

std::optional<Vec3> DomeRun::tip(Vec2 p) const {
  const auto z_mm = drop_.tip_mm(p);
  if (!z_mm)
    return std::nullopt;
  return Vec3(p, std::max(*z_mm, pass_.lowest_mm.value_or(*z_mm)));
}

bool DomeRun::begin_at(Vec2 p) {
  const auto first = tip(p);
  if (!first)
    return false;
  planning_.come_down(p);
  planning_.plunge_to(first->z);
  return true;
}

std::vector<Vec2> DomeRun::straight(Vec2 from, Vec2 to) const {
  const int steps = std::max(1, static_cast<int>(std::ceil(glm::distance(from, to) / step_mm_)));
  std::vector<Vec2> way;
  for (int i = 1; i <= steps; ++i)
    way.push_back(from + (to - from) * (static_cast<double>(i) / steps));
  return way;
}

void DomeRun::follow_to(Vec2 p) { follow(straight(route_.plan_at(), p)); }

/// Distance of p from the straight way a to b.
double off_mm(Vec3 a, Vec3 b, Vec3 p) {
  const Vec3 along = b - a;
  const double length2 = glm::dot(along, along);
  const double u = length2 > 0.0 ? std::clamp(glm::dot(p - a, along) / length2, 0.0, 1.0) : 0.0;
  return glm::distance(p, a + u * along);
}

void DomeRun::follow(const std::vector<Vec2> &way) {
  std::vector<Vec3> tips{route_.at()};
  for (const Vec2 p : way)
    if (const auto at = tip(p))
      tips.push_back(*at);
  // Each move reaches as far as its chord stays true to the places it passes by.
  for (std::size_t from = 0; from + 1 < tips.size();) {
    std::size_t to = from + 1;
    const auto is_true = [&](std::size_t end) {
      for (std::size_t i = from + 1; i < end; ++i)
        if (off_mm(tips[from], tips[end], tips[i]) > pass_.chord_error_mm)
          return false;
      return true;
    };
    while (to + 1 < tips.size() && to - from < kMostSpan && is_true(to + 1))
      ++to;
    route_.line_to(tips[to], pass_.feed_mm_per_min);
    from = to;
  }
}

double DomeRun::rest_radius_mm() const {
  return dome_.surface ? 0.5 * (dome_.outline.high().x - dome_.outline.low().x)
                       : axis_at_rim_mm(dome_, profile_);
}

bool DomeRun::levels() {
  // Rings one stepdown apart, from the apex (a ball: a point) to the rim.
  const double flat_mm = profile_.tip_flat_mm(), rim_mm = axis_at_rim_mm(dome_, profile_);
  const double rim_z_mm =
      std::max(*drop_.tip_mm(dome_.centre + Vec2(rim_mm, 0)), pass_.lowest_mm.value_or(-1e9));
  std::vector<double> heights = level_heights(dome_.apex_z_mm, rim_z_mm, pass_.stepdown_mm, LastLevel::equal);
  heights.insert(heights.begin(), dome_.apex_z_mm);
  if (pass_.order == RingOrder::inwards)
    std::reverse(heights.begin(), heights.end());
  planning_.levels += heights.size();
  const double angle = rad_from_deg(pass_.start.deg);
  double side = turn();
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const double down_mm = reach_mm() - (dome_.apex_z_mm - heights[i]);
    const double r_mm = flat_mm + std::sqrt(std::max(0.0, (reach_mm() - down_mm) * (reach_mm() + down_mm)));
    if (i == 0 ? !begin_at(at_angle(r_mm, angle)) : false)
      return false;
    follow_to(at_angle(r_mm, angle));
    if (r_mm > kRounding_mm)
      route_.arc_to(route_.at(), dome_.centre, side * 2.0 * kPi, pass_.feed_mm_per_min);
    side = pass_.direction == CutDirection::both ? -side : side;
  }
  return true;
}

bool DomeRun::lines() {
  const double angle = rad_from_deg(pass_.angle_deg);
  const Vec2 along{std::cos(angle), std::sin(angle)}, across = left_of(along);
  const Outline limit = dome_.surface ? dome_.outline : Outline::circle(dome_.centre, 2.0 * rest_radius_mm());
  const double half_mm = 0.5 * glm::distance(limit.low(), limit.high());
  const Vec2 middle = 0.5 * (limit.low() + limit.high());
  const int count = static_cast<int>(std::ceil(half_mm / pass_.stepover_mm));
  bool is_back = false, is_first = true;
  for (int k = -count; k <= count; ++k) {
    const int place = pass_.direction == CutDirection::climb ? -k : k;
    const Vec2 origin = middle + place * pass_.stepover_mm * across;
    const std::vector<double> ends = line_crossings(limit, origin, along);
    if (ends.size() < 2 || ends.back() - ends.front() < kRounding_mm)
      continue;
    const Vec2 from = origin + (is_back ? ends.back() : ends.front()) * along;
    const Vec2 to = origin + (is_back ? ends.front() : ends.back()) * along;
    if (!is_first && pass_.direction == CutDirection::both) {
      follow_to(from);
    } else {
      if (!is_first)
        planning_.go_up();
      if (!begin_at(from))
        continue;
    }
    is_first = false;
    ++planning_.levels;
    follow_to(to);
    is_back = pass_.direction == CutDirection::both && !is_back;
  }
  return !is_first ||
         planning_.refuse("no line of the pattern meets the surface", "Make stepover_mm smaller.");
}

bool DomeRun::spiral() {
  const auto &limit = dome_.outline;
  if (dome_.surface && !(limit.elements().size() == 1 && limit.elements().front().is_arc()))
    return planning_.refuse("a spiral needs a round outline", "Choose pattern = \"parallel\".");
  // Turns lie one stepover apart along a cap's surface, over a mesh one stepover apart in plan.
  const double rim_mm = rest_radius_mm(), flat_mm = dome_.surface ? 0.0 : profile_.tip_flat_mm();
  const double slope = dome_.surface ? 0.0 : std::asin((rim_mm - flat_mm) / reach_mm());
  const double width_mm = dome_.surface ? rim_mm : slope * dome_.sphere_radius_mm;
  const double turns = std::max(1.0, std::ceil(width_mm / pass_.stepover_mm - 1e-9));
  const auto radius = [&](double share) {
    return dome_.surface ? share * rim_mm : flat_mm + reach_mm() * std::sin(share * slope);
  };
  const double angle = rad_from_deg(pass_.start.deg), whole_rad = 2.0 * kPi * turns;
  const int looks = static_cast<int>(std::ceil(whole_rad * rim_mm / step_mm_));
  std::vector<Vec2> way;
  for (int i = 0; i <= looks; ++i) {
    const double share = static_cast<double>(i) / looks;
    way.push_back(at_angle(radius(share), angle + turn() * share * whole_rad));
  }
  const int round_looks = static_cast<int>(std::ceil(2.0 * kPi * rim_mm / step_mm_));
  for (int i = 1; i <= round_looks; ++i)
    way.push_back(at_angle(rim_mm, angle + turn() * (whole_rad + 2.0 * kPi * i / round_looks)));
  if (pass_.order == RingOrder::inwards) {
    // Run backwards it would turn the other way: mirror it about the start's direction.
    std::reverse(way.begin(), way.end());
    const Vec2 axis{std::cos(angle), std::sin(angle)};
    for (Vec2 &p : way)
      p = 2.0 * (dome_.centre + glm::dot(p - dome_.centre, axis) * axis) - p;
  }
  planning_.levels += static_cast<std::size_t>(turns);
  if (!begin_at(way.front()))
    return planning_.refuse("the spiral begins where there is no surface", "Check the mesh and the outline.");
  follow(way);
  return true;
}

bool DomeRun::run() {
  switch (pass_.pattern) {
  case Pattern::levels:
    return levels();
  case Pattern::spiral:
    return spiral();
  default:
    return lines();
  }
}

} // namespace

bool plan_dome(Planning &planning) {
  const auto &dome = std::get<DomeFeature>(planning.job.features[planning.pass.feature]);
  const CutterProfile profile = planning.cutter.profile();
  if (!dome.surface && profile.cone_half_angle_rad() > 0.0 &&
      std::asin(std::min(1.0, dome.rim_radius_mm / dome.sphere_radius_mm)) >
          0.5 * kPi - profile.cone_half_angle_rad())
    return planning.refuse("the cap's rim is steeper than the cutter's slanted side",
                           "Choose a ball, flat or corner-radius cutter.");
  if (planning.pass.pattern != Pattern::levels && planning.pass.stepover_mm > planning.cutter.diameter_mm)
    return planning.refuse("stepover_mm is more than the cutter's diameter: ridges would stand",
                           "Make stepover_mm smaller.");
  const double across_mm = glm::distance(dome.outline.low(), dome.outline.high());
  const double step_mm =
      planning.pass.pattern == Pattern::levels ? planning.pass.stepdown_mm : planning.pass.stepover_mm;
  if (!planning.is_few(across_mm / step_mm, "lines or rings") ||
      !planning.is_few(across_mm * across_mm / step_mm / kFarthestWay_mm, "stretches of 50 mm"))
    return false;
  DomeRun run(planning, dome);
  if (!run.run())
    return false;
  planning.go_up();
  return true;
}

} // namespace asperity
