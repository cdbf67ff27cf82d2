// Finds, once for all rows, which strokes can touch which outline elements.
#include "sweep_wall_reach.h"

#include "sweep_wall_hidden.h"
#include "sweep_wall_passing.h"
#include "sweep_wall_pieces.h"

#include "asperity/base/highest.h"
#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Room above the blank within which the envelope is still followed exactly.
constexpr double kHeadroom_mm = 0.05;

double highest_wanted_mm(const WallChart &chart) {
  const double most_mm = std::max(static_cast<double>(highest(chart.blank_mm)), -chart.band_mm);
  return std::min(most_mm + kHeadroom_mm, chart.band_mm);
}

/// Can the contact on one side of a plain stroke, at any height, lie on the element's rays no higher than
/// e_most?
bool can_face(const WallElement &element, const Stroke &stroke, double side, double radius, double slack_mm,
              double e_most) {
  // A rounded tip has contacts anywhere between the centre line and the full radius.
  std::array<Vec2, 3> centre, contact;
  for (std::size_t i = 0; i < 3; ++i) {
    const double u = 0.5 * static_cast<double>(i);
    const Vec2 velocity = stroke.plan_velocity(u);
    centre[i] = stroke.plan_point(u);
    contact[i] = centre[i] + side * radius / glm::length(velocity) * left_of(velocity);
  }
  const double slack = slack_mm + 2.0 * glm::length(contact[1] - 0.5 * (contact[0] + contact[2])) +
                       2.0 * glm::length(centre[1] - 0.5 * (centre[0] + centre[2]));
  if (element.is_arc) {
    // Height changes no faster than the contact moves.
    const double half =
        0.5 * std::max(glm::length(contact[2] - contact[0]), glm::length(centre[2] - centre[0]));
    return std::min(element.height_mm(contact[1]), element.height_mm(centre[1])) <
           e_most + slack + 1.1 * half;
  }
  double lowest = 1e300, first = 1e300, last = -1e300;
  for (std::size_t i = 0; i < 3; ++i) {
    lowest = std::min({lowest, element.height_mm(contact[i]), element.height_mm(centre[i])});
    first = std::min({first, element.position_mm(contact[i]), element.position_mm(centre[i])});
    last = std::max({last, element.position_mm(contact[i]), element.position_mm(centre[i])});
  }
  return lowest < e_most + slack && first < element.half_length_mm + slack &&
         last > -element.half_length_mm - slack;
}

/// Can the disc's centre lie beyond the wall, seen along some ray that meets the disc?
bool may_cross(const WallElement &element, const Stroke &stroke, double radius) {
  const double slack = stroke.offset_max_mm + 1e-6;
  const double half = 0.5 * stroke.plan_length_mm();
  const double height = element.height_mm(stroke.plan_point(0.5));
  if (!element.is_arc)
    return height - half - slack < 0.0;
  // Distance of the stroke from the element's centre: no further from its middle than its length allows, and
  // an arc keeps between the two circles its own centre gives.
  const double at_middle = glm::length(stroke.plan_point(0.5) - element.middle);
  const double apart = glm::length(stroke.centre - element.middle);
  if (element.facing < 0.0) {
    const double farthest =
        stroke.is_arc ? std::min(at_middle + half, apart + stroke.radius_mm) : at_middle + half;
    return farthest + slack > element.radius_mm;
  }
  const double nearest =
      stroke.is_arc ? std::max(at_middle - half, std::abs(apart - stroke.radius_mm)) : at_middle - half;
  return nearest - slack < std::hypot(element.radius_mm, radius);
}

/// Every element near the stroke, and how they may meet.
void add_meetings(const WallPlan &plan, const Stroke &stroke, const Manner &manner,
                  std::vector<Meeting> &meetings) {
  const double radius = plan.cutters[stroke.cutter].profile.radius_mm();
  const double slack =
      2.0 * stroke.offset_max_mm + 2.0 * radius * (manner.turn_rad + manner.drift_rad) + 1e-3;
  const bool is_plain = manner.is_plain && manner.turn_rad < kSmoothTurn_rad;
  const Vec2 middle = stroke.plan_point(0.5);
  const double reach_mm =
      radius + std::max(0.0, plan.e_most_mm) + stroke.offset_max_mm + 0.5 * stroke.plan_length_mm();
  for (std::size_t k = 0; k < plan.elements.size(); ++k) {
    const WallElement &element = plan.elements[k];
    if (!is_near(element, middle, reach_mm))
      continue;
    Meeting meeting;
    meeting.element = static_cast<std::uint32_t>(k);
    meeting.faces_left = !is_plain || can_face(element, stroke, 1.0, radius, slack, plan.e_most_mm);
    meeting.faces_right = !is_plain || can_face(element, stroke, -1.0, radius, slack, plan.e_most_mm);
    meeting.may_cross = may_cross(element, stroke, radius);
    meetings.push_back(meeting);
  }
}

/// Stroke i, all but its side passings.
Reach reach_of(const WallPlan &plan, const std::vector<Manner> &manners, std::size_t i, Found &found) {
  const Stroke &stroke = plan.strokes[i];
  const WallCutter &cutter = plan.cutters[stroke.cutter];
  Reach reach;
  reach.low_mm = stroke.z_begin_mm + std::min(0.0, stroke.z_rise_mm) + cutter.lowest_mm;
  reach.high_mm = stroke.z_begin_mm + std::max(0.0, stroke.z_rise_mm) + cutter.highest_mm;
  reach.begins_smoothly = manners[i].begins_smoothly;
  reach.ends_smoothly = i + 1 < manners.size() && manners[i + 1].begins_smoothly;
  reach.first = static_cast<std::uint32_t>(found.meetings.size());
  add_meetings(plan, stroke, manners[i], found.meetings);
  reach.count = static_cast<std::uint32_t>(found.meetings.size()) - reach.first;
  reach.least_mm = std::numeric_limits<double>::infinity();
  for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k)
    reach.least_mm = std::min(reach.least_mm, least_entry_mm(plan.elements[found.meetings[k].element], stroke,
                                                             cutter.profile.radius_mm()));
  return reach;
}

/// Takes over what was found about the strokes from `begin` to `end`.
void append(WallPlan &plan, const Found &found, std::size_t begin, std::size_t end) {
  const auto meetings = static_cast<std::uint32_t>(plan.meetings.size());
  const auto spans = static_cast<std::uint32_t>(plan.spans.size());
  for (std::size_t i = begin; i < end; ++i) {
    Reach &reach = plan.reaches[i];
    reach.first += meetings;
    for (std::size_t side = 0; side < 2; ++side) {
      reach.first_span[side] += spans;
      reach.last_span[side] += spans;
    }
  }
  plan.meetings.insert(plan.meetings.end(), found.meetings.begin(), found.meetings.end());
  plan.spans.insert(plan.spans.end(), found.spans.begin(), found.spans.end());
}

} // namespace

WallPlan plan_wall(const WallChart &chart, const SweptPath &path, const PathPortion &portion,
                   const ColumnFinder &columns, int threads) {
  constexpr std::size_t kBlock = 512;
  WallPlan plan;
  plan.cutters = wall_cutters_of(path);
  plan.elements = wall_elements_of(chart);
  plan.e_most_mm = highest_wanted_mm(chart);
  const WallSurroundings wall{plan.elements, plan.e_most_mm, chart.z_mm.front(), chart.z_mm.back()};
  const std::vector<std::uint32_t> pieces = pieces_about(wall, path, portion, plan.cutters, threads);
  plan.strokes = strokes_of(path, pieces, plan.cutters, threads);
  plan.reaches.resize(plan.strokes.size());
  const std::vector<Manner> manners = manners_of(plan.strokes, plan.cutters, threads);
  std::vector<Found> found(band_count(plan.strokes.size(), kBlock));
  for_each_band(plan.strokes.size(), kBlock, threads, [&](std::size_t begin, std::size_t end) {
    Found &here = found[begin / kBlock];
    for (std::size_t i = begin; i < end; ++i) {
      plan.reaches[i] = reach_of(plan, manners, i, here);
      for (const WallSide side : kWallSides)
        plan.reaches[i].passing[static_cast<std::size_t>(side)] =
            plan_passing(plan, here, chart, columns, manners, i, side);
    }
  });
  for (std::size_t block = 0; block < found.size(); ++block)
    append(plan, found[block], block * kBlock, std::min((block + 1) * kBlock, plan.strokes.size()));
  choose_first(plan);
  return plan;
}

} // namespace asperity
