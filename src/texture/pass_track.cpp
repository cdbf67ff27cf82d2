// Adds up the plan lengths of a pass's parts.
#include "pass_track.h"

#include <algorithm>

namespace asperity {

PassTrack::PassTrack(const Pass &pass) : pass_(pass), begins_mm_{0.0} {
  for (const PassPart *part : pass.parts)
    begins_mm_.push_back(begins_mm_.back() + part->plan_length_mm);
}

PassTrack::Place PassTrack::nearest(std::size_t from_part, Vec2 p) const {
  Place place{from_part, nearest_share(pass_.parts[from_part]->piece.curve, p)};
  while (place.u >= 1 && place.part + 1 < pass_.parts.size()) {
    const double u = nearest_share(pass_.parts[place.part + 1]->piece.curve, p);
    if (u <= 0)
      break;
    place = {place.part + 1, u};
  }
  while (place.u <= 0 && place.part > 0) {
    const double u = nearest_share(pass_.parts[place.part - 1]->piece.curve, p);
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

Vec2 PassTrack::point(Place place) const { return plan(part(place).piece.curve.point(place.u)); }

Vec2 PassTrack::heading(Place place) const {
  const Vec2 v = plan(part(place).piece.curve.velocity(place.u));
  const double length = glm::length(v);
  return length > 0 ? v / length : Vec2(0.0);
}

} // namespace asperity
