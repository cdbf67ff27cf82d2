// Finds where the axis stood when a cell was cut, when that was, and asks the tooth marks.
#include "wall_marks.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// In a bore hardly wider than the cutter, marks get infinitely near; below this share of the feed none is
/// left.
constexpr double kLeastWallShare = 0.05;

struct AxisPlace {
  double u = 0;
  double height_mm = 0; ///< of the cell above the tip
  double radius_mm = 0; ///< of the swept cutter there
  bool wall_on_right = false;
};

/// The axis stood one cutter radius off the cell's surface, along the ray; bend and radius depend on where
/// along the part that is, but little: two rounds settle it.
AxisPlace axis_place(const PassPart &part, const SweptCutter &cutter, const WallRay &ray,
                     const CutCell &cell) {
  AxisPlace place;
  place.radius_mm = cutter.profile.radius_mm();
  Vec2 bend{0.0};
  for (int round = 0; round < 2; ++round) {
    const Vec2 axis = ray.foot + (cell.e_mm + place.radius_mm) * ray.normal - bend;
    place.u = nearest_share(part.piece.curve, axis);
    place.height_mm = std::max(0.0, cell.z_mm - part.tip_z_mm(place.u));
    place.radius_mm = cutter.profile.radius_at(place.height_mm);
    place.wall_on_right = cross(plan(part.piece.curve.velocity(place.u)), ray.normal) > 0;
    bend = bend_mm(part.piece, cutter, place.u, place.height_mm, place.wall_on_right);
  }
  return place;
}

} // namespace

WallRay wall_ray(const WallChart &chart, std::size_t column) {
  WallRay ray{.foot = chart.foot[column], .normal = chart.normal[column]};
  const OutlineElement &element = chart.outline.elements()[chart.outline.element_at(chart.s_mm[column])];
  if (element.is_arc())
    ray.wall_per_mm =
        (element.sweep_rad > 0) != chart.inside ? 1.0 / element.radius_mm() : -1.0 / element.radius_mm();
  ray.facing_turns = std::atan2(-ray.normal.y, -ray.normal.x) / (2.0 * kPi);
  return ray;
}

const ToothMarks *WallMarks::marks_of(std::uint16_t tool, double radius_mm, const Moment &moment,
                                      double wall_per_mm, bool is_climb) {
  if (moment.rev_per_s <= 0)
    return nullptr;
  const MarkingCutter &cutter = store_.cutter(tool);
  MarkKind kind{.tool = tool,
                .radius_mm = radius_mm - cutter.eccentricity_mm,
                .wall_per_mm = wall_per_mm,
                .is_climb = is_climb};
  // Round a disc the marks stand closer than the axis places they are made from, in a bore farther apart; and
  // as the axis goes round, it meets the same tooth at the wall a little sooner or later than after a whole
  // turn.
  const double stretch = 1.0 + wall_per_mm * radius_mm;
  if (stretch < kLeastWallShare)
    return nullptr;
  const double round_per_s = moment.plan_speed_mm_per_s * wall_per_mm / (stretch * 2.0 * kPi);
  const double meetings_per_s = moment.rev_per_s + (is_climb ? -round_per_s : round_per_s);
  const double feed = moment.plan_speed_mm_per_s / (moment.rev_per_s * cutter.flutes);
  if (feed < kLeastFeed_mm || kind.radius_mm <= feed * cutter.flutes || meetings_per_s <= 0)
    return nullptr;
  kind.feed_per_tooth_mm = moment.plan_speed_mm_per_s / (stretch * meetings_per_s * cutter.flutes);
  return &store_.marks(kind);
}

std::optional<double> WallMarks::height_mm(const Pass &pass, const WallRay &ray, const CutCell &cell) {
  const PassPart &part = *pass.parts[cell.part];
  if (part.stands())
    return 0.0;
  const AxisPlace place = axis_place(part, source_.swept.cutters[part.piece.cutter], ray, cell);
  if (pass.is_left_to_neighbour(cell.part, place.u))
    return std::nullopt;
  const Moment moment = moment_at(*part.timed, part.stretch.at(place.u));
  const bool is_clockwise = part.timed->turn != SpindleTurn::counter_clockwise;
  const ToothMarks *marks = marks_of(part.timed->tool, place.radius_mm, moment, ray.wall_per_mm,
                                     place.wall_on_right == is_clockwise);
  if (marks == nullptr)
    return 0.0;
  // A tooth reaches the wall when the spindle has turned to face it.
  const double turns = moment.turns + (is_clockwise ? ray.facing_turns : -ray.facing_turns);
  return marks->height_at_turn_mm(turns - std::floor(turns), place.height_mm);
}

} // namespace asperity
