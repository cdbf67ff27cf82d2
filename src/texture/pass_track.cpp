// Adds up the plan lengths of a pass's parts.
#include "pass_track.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

Vec2 unit(Vec2 v) {
  const double length = glm::length(v);
  return length > 0 ? v / length : Vec2(0.0);
}

} // namespace

PassTrack::Way PassTrack::way_of(const Curve &curve) {
  Way way;
  if (curve.is_line()) {
    way.kind = Way::Kind::line;
    way.begin = plan(curve.begin);
    way.along = plan(curve.end) - way.begin;
    way.heading = unit(way.along);
    const double square = glm::dot(way.along, way.along);
    way.per_square = square > 0 ? 1.0 / square : 0.0;
  } else if (curve.is_plan_arc() && plan(curve.rise) == Vec2(0.0)) {
    way.kind = Way::Kind::arc;
    const double middle = curve.start_rad + 0.5 * curve.sweep_rad;
    const Vec2 x = plan(curve.axis_x), y = plan(curve.axis_y);
    way.centre = plan(curve.centre);
    way.radius_mm = curve.radius_mm;
    way.sweep_rad = curve.sweep_rad;
    way.out = std::cos(middle) * x + std::sin(middle) * y;
    way.on = std::cos(middle) * y - std::sin(middle) * x;
  }
  return way;
}

PassTrack::PassTrack(const Pass &pass) : pass_(pass), begins_mm_{0.0} {
  for (const PassPart *part : pass.parts) {
    begins_mm_.push_back(begins_mm_.back() + part->plan_length_mm);
    ways_.push_back(way_of(part->piece.curve));
    Way &way = ways_.back();
    way.level = level_share(part->timed->curve, 0.5);
    const PathPiece &piece = *part->timed;
    const auto has_peak_speed = [&](double u) {
      return piece.speed_at(part->stretch.at(u) * piece.length_mm) == piece.v_peak_mm_per_s;
    };
    way.is_steady =
        way.kind != Way::Kind::other && piece.v_peak_mm_per_s > 0 && has_peak_speed(0) && has_peak_speed(1);
    if (way.is_steady) {
      const std::size_t at = ways_.size() - 1;
      way.at_begin = looked_up({at, 0});
      way.turns = looked_up({at, 1}).turns - way.at_begin.turns;
    }
  }
}

double PassTrack::nearest_share_on(std::size_t part, Vec2 p) const {
  const Way &way = ways_[part];
  const Curve &curve = pass_.parts[part]->piece.curve;
  if (way.kind == Way::Kind::line)
    return std::clamp(glm::dot(p - way.begin, way.along) * way.per_square, 0.0, 1.0);
  if (way.kind == Way::Kind::other)
    return nearest_share(curve, p);
  const Vec2 spoke = p - way.centre; // counted from the arc's middle: both ends are reached without a jump
  return std::clamp(0.5 + std::atan2(glm::dot(spoke, way.on), glm::dot(spoke, way.out)) / way.sweep_rad, 0.0,
                    1.0);
}

PassTrack::Place PassTrack::nearest(std::size_t from_part, Vec2 p) const {
  Place place{from_part, nearest_share_on(from_part, p)};
  while (place.u >= 1 && place.part + 1 < pass_.parts.size()) {
    const double u = nearest_share_on(place.part + 1, p);
    if (u <= 0)
      break;
    place = {place.part + 1, u};
  }
  while (place.u <= 0 && place.part > 0) {
    const double u = nearest_share_on(place.part - 1, p);
    if (u >= 1)
      break;
    place = {place.part - 1, u};
  }
  return place;
}

double PassTrack::along_mm(Place place) const {
  return begins_mm_[place.part] + place.u * part(place).plan_length_mm;
}

PassTrack::Place PassTrack::at(double along_mm) const {
  if (!holds(last_, along_mm)) {
    const auto after = std::upper_bound(begins_mm_.begin() + 1, begins_mm_.end() - 1, along_mm);
    last_ = static_cast<std::size_t>(after - begins_mm_.begin()) - 1;
  }
  const std::size_t i = last_;
  const double length = pass_.parts[i]->plan_length_mm;
  return {i, length > 0 ? std::clamp((along_mm - begins_mm_[i]) / length, 0.0, 1.0) : 0.0};
}

PassTrack::Spot PassTrack::spot(Place place) const {
  const Way &way = ways_[place.part];
  if (way.kind == Way::Kind::line)
    return {way.begin + place.u * way.along, way.heading};
  const Curve &curve = part(place).piece.curve;
  if (way.kind == Way::Kind::other)
    return {plan(curve.point(place.u)), unit(plan(curve.velocity(place.u)))};
  const double angle = (place.u - 0.5) * way.sweep_rad, cos = std::cos(angle), sin = std::sin(angle);
  return {way.centre + way.radius_mm * (cos * way.out + sin * way.on),
          std::copysign(1.0, way.sweep_rad) * (cos * way.on - sin * way.out)};
}

PassTrack::Spot PassTrack::spot_nearest(Place place, Vec2 p) const {
  const Way &way = ways_[place.part];
  if (way.kind != Way::Kind::arc || place.u <= 0 || place.u >= 1 || p == way.centre)
    return spot(place);
  const Vec2 out = unit(p - way.centre);
  return {way.centre + way.radius_mm * out, std::copysign(1.0, way.sweep_rad) * left_of(out)};
}

std::optional<PassTrack::Meeting> PassTrack::meeting_on_arc(Place nearest, Vec2 p, double distance_mm,
                                                            double side) const {
  const Way &way = ways_[nearest.part];
  if (way.kind != Way::Kind::arc || nearest.u <= 0 || nearest.u >= 1)
    return std::nullopt;
  // Centre, p and the axis make a triangle of known sides.
  const Vec2 spoke = p - way.centre;
  const double away = glm::length(spoke), radius = way.radius_mm;
  const double cos = (radius * radius + away * away - distance_mm * distance_mm) / (2.0 * radius * away);
  if (!(std::abs(cos) < 1.0))
    return std::nullopt;
  Meeting meeting;
  meeting.along_mm = along_mm(nearest) + side * radius * std::acos(cos);
  if (meeting.along_mm <= 0 || meeting.along_mm >= length_mm())
    return std::nullopt;
  meeting.place = at(meeting.along_mm);
  const Way &there = ways_[meeting.place.part];
  if (there.kind != Way::Kind::arc || there.centre != way.centre || there.radius_mm != radius ||
      there.sweep_rad * way.sweep_rad < 0)
    return std::nullopt;
  const Vec2 out = spoke / away;
  const double sin = std::copysign(std::sqrt(1.0 - cos * cos), side * way.sweep_rad);
  meeting.to_point = spoke - radius * (cos * out + sin * left_of(out));
  return meeting;
}

Moment PassTrack::looked_up(Place place) const {
  const PassPart &part = this->part(place);
  const double share = part.stretch.at(place.u);
  const Way &way = ways_[place.part];
  return way.kind == Way::Kind::other ? moment_at(*part.timed, share)
                                      : moment_at(*part.timed, share, way.level);
}

Moment PassTrack::moment(Place place) const {
  const Way &way = ways_[place.part];
  if (!way.is_steady)
    return looked_up(place);
  Moment moment = way.at_begin;
  moment.turns += place.u * way.turns;
  return moment;
}

std::optional<PassTrack::Course> PassTrack::steady_course(const Meeting &meeting) const {
  const Way &way = ways_[meeting.place.part];
  const double length = part(meeting.place).plan_length_mm;
  if (!way.is_steady || length == 0)
    return std::nullopt;
  Course course;
  course.met = {.to_point = meeting.to_point,
                .heading = spot(meeting.place).heading,
                .turn_per_mm =
                    way.kind == Way::Kind::arc ? std::copysign(1.0, way.sweep_rad) / way.radius_mm : 0.0,
                .before_mm = meeting.place.u * length,
                .after_mm = (1.0 - meeting.place.u) * length};
  course.turns_per_mm = way.turns / length;
  return course;
}

} // namespace asperity
