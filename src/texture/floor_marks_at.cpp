// Finds when a tooth went over a point of the floor, and how much higher it left it than a full turn would.
#include "floor_marks_at.h"

#include "asperity/base/units.h"
#include "asperity/surface/floor_marks.h"

#include <algorithm>
#include <cmath>

namespace asperity {

struct FloorPoint {
  Vec2 p{0.0};
  PassTrack::Place nearest;
  Vec2 from_axis{0.0}; ///< p from the nearest place
  Vec2 heading{0.0};
  double across_mm = 0; ///< positive to the left
  double along_mm = 0;  ///< p's place along the pass, running on straight beyond its ends
};

namespace {

const double kDishSlope = std::tan(kDish_rad);

/// Clockwise, what lies further to the left has been passed longer ago.
double turns_per_rad(const PathPiece &piece) {
  return (piece.turn != SpindleTurn::counter_clockwise ? 1.0 : -1.0) / (2.0 * kPi);
}

/// Spindle turns since a marking tooth stood in direction d from the axis, 0..1, in turns between marks.
double turns_since_mark(const Moment &moment, const PathPiece &piece, Vec2 d, int marking) {
  const double turns = (moment.turns + std::atan2(d.y, d.x) * turns_per_rad(piece)) * marking;
  return turns - std::floor(turns);
}

EndFloor end_floor(const FloorTooth &tooth) {
  return {tooth.circle_mm + tooth.hollow_mm, tooth.hollow_mm, kDishSlope, tooth.pitch_mm};
}

FloorPoint seen_from(const PassTrack &track, std::size_t part, Vec2 p) {
  FloorPoint seen{.p = p, .nearest = track.nearest(part, p)};
  const PassTrack::Spot spot = track.spot_nearest(seen.nearest, p);
  seen.from_axis = p - spot.point;
  if (track.part(seen.nearest).stands())
    return seen;
  seen.heading = spot.heading;
  seen.across_mm = cross(seen.heading, seen.from_axis);
  seen.along_mm = track.along_mm(seen.nearest) + glm::dot(seen.heading, seen.from_axis);
  return seen;
}

/// Where the axis stood when its circle went over the point: found as if the pass ran straight; where it is
/// curved, the circle is met a little elsewhere.
PassTrack::Meeting meeting_by_steps(const PassTrack &track, const FloorPoint &seen, double circle_mm,
                                    double side) {
  PassTrack::Meeting met;
  met.along_mm = seen.along_mm + side * std::sqrt(circle_mm * circle_mm - seen.across_mm * seen.across_mm);
  const auto go = [&] {
    met.place = track.at(met.along_mm);
    const PassTrack::Spot spot = track.spot(met.place);
    met.to_point = seen.p - spot.point;
    return spot.heading;
  };
  Vec2 heading = go();
  for (int round = 0; round < 6; ++round) {
    constexpr double kMet_mm = 1e-12; // straight passes are
    const double beyond = glm::length(met.to_point) - circle_mm,
                 closing = glm::dot(met.to_point, heading) / circle_mm;
    if (std::abs(beyond) <= kMet_mm || std::abs(closing) <= 0.05 || met.along_mm <= 0 ||
        met.along_mm >= track.length_mm())
      break;
    met.along_mm += beyond / closing;
    heading = go();
  }
  return met;
}

} // namespace

FloorMarks::FloorMarks(const TextureSource &source)
    : source_(source), store_(source.job), lean_(std::tan(rad_from_deg(source.job.machine.tram_deg))) {}

const FloorMarks::Still &FloorMarks::still(std::uint16_t tool) {
  if (last_still_ != nullptr && last_tool_ == tool)
    return *last_still_;
  const auto [found, is_new] = still_.try_emplace(tool);
  Still &still = found->second;
  if (is_new) {
    const MarkingCutter &cutter = store_.cutter(tool);
    const double flat = cutter.nominal.tip_flat_mm();
    still.tooth.hollow_mm = cutter.nominal.corner_mm();
    still.tooth.circle_mm = std::max(0.0, flat);
    if (flat > 0)
      still.tooth.kind = FloorTooth::Kind::arcs;
    else if (still.tooth.hollow_mm > 0)
      still.tooth.kind = FloorTooth::Kind::dents;
    still.flutes = cutter.flutes;
    still.lead_mm = cutter.eccentricity_mm * (1.0 - std::cos(2.0 * kPi / cutter.flutes));
  }
  last_still_ = &still;
  last_tool_ = tool;
  return still;
}

FloorTooth FloorMarks::tooth(std::uint16_t tool, const Moment &moment) {
  const Still &cutter = still(tool);
  FloorTooth tooth = cutter.tooth;
  if (tooth.kind == FloorTooth::Kind::none || moment.rev_per_s <= 0)
    return tooth;
  const double feed = moment.plan_speed_mm_per_s / (moment.rev_per_s * cutter.flutes);
  if (feed < kLeastFeed_mm)
    return tooth;
  // A lead over the second longest tooth that hides all others' marks; end edges are straight, hollows round.
  const bool one_tooth_only =
      cutter.flutes == 1 ||
      (tooth.hollow_mm > 0 ? store_.marks({tool, tooth.hollow_mm, feed, 0.0, true}).marking_teeth() == 1
                           : cutter.lead_mm >= (cutter.flutes - 1) * feed * kDishSlope);
  tooth.marking = one_tooth_only ? 1 : cutter.flutes;
  tooth.pitch_mm = feed * cutter.flutes / tooth.marking;
  return tooth;
}

std::optional<double> FloorMarks::height_mm(const Pass &pass, const PassTrack &track, std::size_t part,
                                            Vec2 p) {
  const FloorPoint seen = seen_from(track, part, p);
  const FloorTooth &still = this->still(track.part(seen.nearest).timed->tool).tooth;
  if (track.part(seen.nearest).stands())
    return still.kind == FloorTooth::Kind::arcs ? lean_mm(seen, still.circle_mm) : 0.0;
  if (still.kind == FloorTooth::Kind::dents)
    return dent_mm(pass, track, seen);
  return still.kind == FloorTooth::Kind::arcs ? arc_mm(pass, track, seen) : 0.0;
}

std::optional<FloorMarks::KnownArc> FloorMarks::known_arc(const Pass &pass, const PassTrack &track,
                                                          std::size_t part, Vec2 p) {
  // A leaning spindle leaves a height that depends on the nearest place too.
  if (lean_ != 0 || still(pass.parts[part]->timed->tool).tooth.kind != FloorTooth::Kind::arcs)
    return std::nullopt;
  const FloorPoint seen = seen_from(track, part, p);
  bool is_neighbours = false;
  const auto arc =
      track.part(seen.nearest).stands() ? std::nullopt : this->arc(pass, track, seen, is_neighbours);
  const auto course = arc ? track.steady_course(arc->met) : std::nullopt;
  constexpr double kMet_mm = 1e-9; // within a kink it may not be met
  if (!course || std::abs(glm::length(arc->met.to_point) - arc->tooth.circle_mm) > kMet_mm)
    return std::nullopt;
  return KnownArc{*arc, course->met, course->turns_per_mm * arc->tooth.marking,
                  turns_per_rad(*track.part(arc->met.place).timed) * arc->tooth.marking};
}

FloorMarks::Row FloorMarks::beside(const KnownArc &arc, const Eight &x_mm) {
  const ArcsBeside there = arcs_beside(arc.met, x_mm);
  const double per_turn = -arc.arc.side * arc.arc.tooth.pitch_mm;
  Eight along_mm{};
  for (std::size_t i = 0; i < kEight; ++i)
    along_mm[i] = per_turn * (arc.arc.since + there.along_mm[i] * arc.turns_per_mm +
                              there.angle_rad[i] * arc.turns_per_rad);
  Row row{.known = there.found};
  end_floor_middles_mm(end_floor(arc.arc.tooth), along_mm, row.height_mm);
  return row;
}

std::optional<double> FloorMarks::dent_mm(const Pass &pass, const PassTrack &track, const FloorPoint &seen) {
  const PassPart &under = track.part(seen.nearest);
  const double radius = still(under.timed->tool).tooth.hollow_mm;
  const double section = std::sqrt(std::max(0.0, radius * radius - seen.across_mm * seen.across_mm));
  if (section == 0)
    return 0.0;

  // Climbing, a ball leaves its surface ahead of its middle; falling, behind. Where the slope changes, it is
  // the one there that counts: two rounds settle it.
  PassTrack::Place place = seen.nearest;
  double ahead = 0;
  for (int round = 0; round < 2; ++round) {
    const Vec3 velocity = track.part(place).piece.curve.velocity(place.u);
    const double level = glm::length(plan(velocity)), slope = level > 0 ? velocity.z / level : 0.0;
    ahead = slope * section / std::sqrt(1.0 + slope * slope);
    place = track.at(seen.along_mm - ahead);
  }
  if (pass.is_left_to_neighbour(place.part, place.u))
    return std::nullopt;
  const PassPart &part = track.part(place);
  const Moment moment = track.moment(place);
  const FloorTooth teeth = tooth(part.timed->tool, moment);
  if (teeth.pitch_mm == 0)
    return 0.0;

  // The sphere stands still for a dent once a mark; the lowest of the nearest three is what remains.
  const auto surface = [&](double axis_mm) {
    const double x = ahead - axis_mm;
    const PassTrack::Place at = track.at(seen.along_mm - ahead + axis_mm);
    return x * x < section * section ? track.part(at).tip_z_mm(at.u) - std::sqrt(section * section - x * x)
                                     : HUGE_VAL;
  };
  const double since = turns_since_mark(moment, *part.timed, {1.0, 0.0}, teeth.marking);
  double lowest = HUGE_VAL;
  for (const double k : {-1.0, 0.0, 1.0})
    lowest = std::min(lowest, surface((k - since) * teeth.pitch_mm));
  return lowest == HUGE_VAL ? 0.0 : std::max(0.0, lowest - surface(0.0));
}

std::optional<FloorMarks::Arc> FloorMarks::arc(const Pass &pass, const PassTrack &track,
                                               const FloorPoint &seen, bool &is_neighbours) {
  const double circle = still(track.part(seen.nearest).timed->tool).tooth.circle_mm;
  if (std::abs(seen.across_mm) >= circle)
    return std::nullopt;

  // The half of the circle that runs lower marks last: the leading one, unless the spindle leans away.
  const bool trails = seen.heading.x * lean_ < 0;
  Arc arc;
  arc.side = trails ? 1.0 : -1.0;
  const auto on_arc = track.meeting_on_arc(seen.nearest, seen.p, circle, arc.side);
  arc.met = on_arc ? *on_arc : meeting_by_steps(track, seen, circle, arc.side);
  // Before the pass began or after it ended the cutter stood there and left no arcs.
  if (arc.met.along_mm < 0 || arc.met.along_mm > track.length_mm()) {
    is_neighbours = arc.met.along_mm < 0 ? pass.runs_on_before : pass.runs_on_after;
    return std::nullopt;
  }

  const PathPiece &piece = *track.part(arc.met.place).timed;
  const Moment moment = track.moment(arc.met.place);
  arc.tooth = tooth(piece.tool, moment);
  if (arc.tooth.pitch_mm == 0)
    return std::nullopt;
  arc.since = turns_since_mark(moment, piece, arc.met.to_point, arc.tooth.marking);
  return arc;
}

std::optional<double> FloorMarks::arc_mm(const Pass &pass, const PassTrack &track, const FloorPoint &seen) {
  bool is_neighbours = false;
  const auto arc = this->arc(pass, track, seen, is_neighbours);
  if (is_neighbours)
    return std::nullopt;
  const double lean = lean_mm(seen, still(track.part(seen.nearest).timed->tool).tooth.circle_mm);
  if (!arc)
    return lean;
  return lean +
         end_floor_texture_mm(end_floor(arc->tooth), -arc->side * arc->since * arc->tooth.pitch_mm, 0.0);
}

/// A cutter leaning about y, +x low: over the points at one distance across, the lowest edge that comes by,
/// against the lowest of all. [derived: height of the end circle at d is -d.x tan(lean)]
double FloorMarks::lean_mm(const FloorPoint &seen, double circle_mm) const {
  if (lean_ == 0)
    return 0.0;
  if (seen.heading == Vec2(0.0))
    return circle_mm * std::abs(lean_) - seen.from_axis.x * lean_;
  const double across = std::clamp(seen.across_mm, -circle_mm, circle_mm);
  const double half_chord = std::sqrt(circle_mm * circle_mm - across * across);
  return circle_mm * std::abs(lean_) - half_chord * std::abs(seen.heading.x * lean_) -
         across * left_of(seen.heading).x * lean_;
}

} // namespace asperity
