// Adds up the plan lengths of a pass's parts.
#include "pass_track.h"

#include <algorithm>

namespace asperity {

namespace {

Vec2 unit(Vec2 v) {
  const double length = glm::length(v);
  return length > 0 ? v / length : Vec2(0.0);
}

} // namespace

PassTrack::PassTrack(const Pass &pass) : pass_(pass), begins_mm_{0.0} {
  for (const PassPart *part : pass.parts) {
    begins_mm_.push_back(begins_mm_.back() + part->plan_length_mm);
    const Curve &curve = part->piece.curve;
    Way &way = ways_.emplace_back();
    way.is_line = curve.is_line();
    if (!way.is_line)
      continue;
    way.begin = plan(curve.begin);
    way.along = plan(curve.end) - way.begin;
    way.heading = unit(way.along);
    const double square = glm::dot(way.along, way.along);
    way.per_square = square > 0 ? 1.0 / square : 0.0;
  }
}

double PassTrack::nearest_share_on(std::size_t part, Vec2 p) const {
  const Way &way = ways_[part];
  if (!way.is_line)
    return nearest_share(pass_.parts[part]->piece.curve, p);
  return std::clamp(glm::dot(p - way.begin, way.along) * way.per_square, 0.0, 1.0);
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
  const auto after = std::upper_bound(begins_mm_.begin() + 1, begins_mm_.end() - 1, along_mm);
  const auto i = static_cast<std::size_t>(after - begins_mm_.begin()) - 1;
  const double length = pass_.parts[i]->plan_length_mm;
  return {i, length > 0 ? std::clamp((along_mm - begins_mm_[i]) / length, 0.0, 1.0) : 0.0};
}

Vec2 PassTrack::point(Place place) const {
  const Way &way = ways_[place.part];
  return way.is_line ? way.begin + place.u * way.along : plan(part(place).piece.curve.point(place.u));
}

Vec2 PassTrack::heading(Place place) const {
  const Way &way = ways_[place.part];
  return way.is_line ? way.heading : unit(plan(part(place).piece.curve.velocity(place.u)));
}

} // namespace asperity
