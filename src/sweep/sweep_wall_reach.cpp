// Finds, once for all rows, which strokes can touch which outline elements.
#include "sweep_wall_reach.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Room above the blank within which the envelope is still followed exactly.
constexpr double kHeadroom_mm = 0.05;

double highest_wanted_mm(const WallChart &chart) {
  double most = -chart.band_mm;
  for (const float blank : chart.blank_mm)
    most = std::max(most, static_cast<double>(blank));
  return std::min(most + kHeadroom_mm, chart.band_mm);
}

/// Largest change of any offset over the stroke [mm].
double offset_change_mm(const Stroke &stroke) {
  double most = 0.0;
  for (std::size_t side = 0; side < 2; ++side)
    for (std::size_t i = 0; i < kBendNodes; ++i)
      most = std::max(most, glm::length(stroke.end[side][i] - stroke.begin[side][i]));
  return most;
}

double angle_between(Vec2 a, Vec2 b) { return std::abs(std::atan2(cross(a, b), glm::dot(a, b))); }

/// How the stroke is seen from its neighbours.
struct Manner {
  bool is_plain = false; ///< level or of steady radius, and really moving
  double drift_rad = 0;  ///< how far changing offsets may turn the motion
  double turn_rad = 0;   ///< at its begin, against the stroke before
};

std::vector<Manner> manners_of(const std::vector<Stroke> &strokes) {
  constexpr double kMostDrift = 0.2;
  std::vector<Manner> manners(strokes.size());
  for (std::size_t i = 0; i < strokes.size(); ++i) {
    const double length = strokes[i].plan_length_mm();
    manners[i].drift_rad = length > 0.0 ? 1.5 * offset_change_mm(strokes[i]) / length : kMostDrift;
    manners[i].is_plain = length > 0.0 && manners[i].drift_rad < kMostDrift && !strokes[i].has_varying_radius;
    if (i > 0 && strokes[i].joins_previous && length > 0.0)
      manners[i].turn_rad = angle_between(strokes[i - 1].plan_velocity(1.0), strokes[i].plan_velocity(0.0));
  }
  return manners;
}

/// Both level, or one the continuation of the other at the same rise: every row sees the joint alike.
bool is_quiet_joint(const Stroke &a, const Stroke &b, const Manner &ma, const Manner &mb) {
  constexpr double kQuietTurn_rad = 0.1, kQuietDrift_rad = 0.05;
  return b.joins_previous && a.cutter == b.cutter && ma.is_plain && mb.is_plain && a.z_rise_mm == 0.0 &&
         b.z_rise_mm == 0.0 && a.z_begin_mm == b.z_begin_mm && mb.turn_rad < kQuietTurn_rad &&
         ma.drift_rad + mb.drift_rad < kQuietDrift_rad;
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

/// Cheap first: box against box, then true distance from the stroke's middle.
bool is_near(const WallElement &element, const Stroke &stroke, double reach_mm) {
  const double most = reach_mm + 0.5 * stroke.plan_length_mm();
  const Vec2 middle = stroke.plan_point(0.5);
  if (middle.x < element.low.x - most || middle.x > element.high.x + most ||
      middle.y < element.low.y - most || middle.y > element.high.y + most)
    return false;
  return element.shape.distance_mm(middle) <= most;
}

} // namespace

WallPlan plan_wall(const WallChart &chart, const SweptPath &path) {
  WallPlan plan;
  plan.cutters = wall_cutters_of(path);
  plan.strokes = strokes_of(path, plan.cutters);
  plan.elements = wall_elements_of(chart);
  plan.e_most_mm = highest_wanted_mm(chart);
  plan.reaches.resize(plan.strokes.size());
  const std::vector<Manner> manners = manners_of(plan.strokes);
  for (std::size_t i = 0; i < plan.strokes.size(); ++i) {
    const Stroke &stroke = plan.strokes[i];
    const Manner &manner = manners[i];
    const double radius = plan.cutters[stroke.cutter].profile.radius_mm();
    const double slack =
        2.0 * stroke.offset_max_mm + 2.0 * radius * (manner.turn_rad + manner.drift_rad) + 1e-3;
    Reach &reach = plan.reaches[i];
    reach.first = static_cast<std::uint32_t>(plan.meetings.size());
    for (std::size_t k = 0; k < plan.elements.size(); ++k) {
      const WallElement &element = plan.elements[k];
      if (!is_near(element, stroke, radius + std::max(0.0, plan.e_most_mm) + stroke.offset_max_mm))
        continue;
      Meeting meeting;
      meeting.element = static_cast<std::uint32_t>(k);
      const bool is_plain = manner.is_plain && manner.turn_rad < kSmoothTurn_rad;
      meeting.faces_left = !is_plain || can_face(element, stroke, 1.0, radius, slack, plan.e_most_mm);
      meeting.faces_right = !is_plain || can_face(element, stroke, -1.0, radius, slack, plan.e_most_mm);
      meeting.may_cross = may_cross(element, stroke, radius);
      reach.faces_left |= meeting.faces_left || meeting.may_cross;
      reach.faces_right |= meeting.faces_right || meeting.may_cross;
      plan.meetings.push_back(meeting);
    }
    reach.count = static_cast<std::uint32_t>(plan.meetings.size()) - reach.first;
    if (i > 0)
      reach.begins_quietly = plan.reaches[i - 1].ends_quietly =
          is_quiet_joint(plan.strokes[i - 1], stroke, manners[i - 1], manner);
  }
  return plan;
}

} // namespace asperity
