// Places the contact of the straight cutter on the wall, with room for all that bending may change.
#include "sweep_wall_passing.h"

#include "sweep_wall_contact.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A contact direction that leans no further from the wall than this (a sine) faces it at every bend.
constexpr double kFacing = 0.3;

/// Is the parabola that offsets changing in height and along the way make near enough to its chord?
bool keeps_straight(const Stroke &stroke, const WallCutter &cutter) {
  if (stroke.is_arc || stroke.z_rise_mm == 0.0)
    return !stroke.is_arc;
  double most = 0.0;
  for (std::size_t side = 0; side < 2; ++side)
    for (std::size_t i = 1; i < kBendNodes; ++i) {
      const Vec2 bend = offset_law(stroke.end[side], cutter.node_height_mm, i).slope -
                        offset_law(stroke.begin[side], cutter.node_height_mm, i).slope;
      most = std::max(most, glm::length(bend));
    }
  return std::abs(stroke.z_rise_mm) * most < 4.0 * kSame_mm;
}

/// The contact of the unbent cutter, widened by what bending may move it.
ContactPath widened_path(const Stroke &before, const Stroke &stroke, const WallCutter &cutter,
                         double drift_rad, WallSide side) {
  Section section;
  section.stroke = &stroke;
  section.cutter = &cutter;
  section.side = side;
  section.steady_radius_mm = cutter.profile.radius_mm();
  section.is_straight = !stroke.is_arc;
  const Disc begin = section.at(0.0);
  ContactPath path = contact_path(section, sign_of(side), begin, section.at(1.0));
  Disc fan = begin;
  fan.velocity = before.plan_velocity(1.0);
  path.set_fan(fan, sign_of(side));
  path.bow_mm += stroke.offset_max_mm + cutter.profile.radius_mm() * drift_rad;
  path.turn_slack = kFacing;
  return path;
}

/// False when the contact does not plainly face every ray it may pass.
bool add_spans(const WallPlan &plan, const WallChart &chart, const ColumnFinder &columns,
               const WallElement &element, const ContactPath &path, std::vector<ColumnSpan> &spans) {
  const ContactTrack track = track_on(element, path, plan.e_most_mm);
  if (track.window.is_empty())
    return true;
  bool is_plain = true;
  const double u_per_mm = track.last_mm != track.first_mm ? 1.0 / (track.last_mm - track.first_mm) : 0.0;
  std::size_t end = chart.columns();
  columns.for_columns(element, track.window, [&](std::size_t column, double position) {
    is_plain = is_plain && glm::dot(chart.normal[column], path.begin_direction) < -kFacing &&
               glm::dot(chart.normal[column], path.end_direction) < -kFacing;
    if (column != end) {
      const double u = u_per_mm * (position - track.first_mm);
      spans.push_back({.begin = static_cast<std::uint32_t>(column),
                       .u_origin = u - u_per_mm * chart.s_mm[column],
                       .u_per_mm = u_per_mm});
    }
    end = column + 1;
    spans.back().end = static_cast<std::uint32_t>(end);
  });
  return is_plain;
}

} // namespace

Passing plan_passing(WallPlan &plan, Found &found, const WallChart &chart, const ColumnFinder &columns,
                     const std::vector<Manner> &manners, std::size_t i, WallSide side) {
  const Stroke &stroke = plan.strokes[i];
  const WallCutter &cutter = plan.cutters[stroke.cutter];
  Reach &reach = plan.reaches[i];
  if (reach.count == 0 || !reach.begins_smoothly)
    return Passing::any;
  bool faces = false;
  for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k) {
    if (found.meetings[k].may_cross)
      return Passing::any;
    faces = faces || found.meetings[k].faces(side);
  }
  if (!faces && reach.ends_smoothly && manners[i - 1].is_plain && manners[i + 1].is_plain)
    return Passing::idle;

  const auto at = static_cast<std::size_t>(side);
  const ContactPath path = widened_path(plan.strokes[i - 1], stroke, cutter,
                                        manners[i - 1].drift_rad + manners[i].drift_rad, side);
  const std::size_t first = found.spans.size();
  for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k) {
    const Meeting &meeting = found.meetings[k];
    if (meeting.faces(side) &&
        !add_spans(plan, chart, columns, plan.elements[meeting.element], path, found.spans)) {
      found.spans.resize(first);
      return Passing::any;
    }
  }
  reach.first_span[at] = static_cast<std::uint32_t>(first);
  reach.last_span[at] = static_cast<std::uint32_t>(found.spans.size());
  return keeps_straight(stroke, cutter) ? Passing::straight : Passing::curved;
}

} // namespace asperity
