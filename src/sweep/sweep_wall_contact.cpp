// Contact paths of a moving, growing disc and their projection on outline elements.
#include "sweep_wall_contact.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Rays that run through the centre of their arc can be met beyond it.
bool is_met_beyond_centre(const WallElement &element, const ContactPath &path, double e_most) {
  if (element.facing < 0.0)
    return element.radius_mm <= e_most + 1e-6;
  return distance_to_segment_mm(element.middle, path.centre_begin, path.centre_end) <
         path.radius_mm + path.bow_mm;
}

/// Not unit on arcs: only its direction counts.
Vec2 normal_at(const WallElement &element, Vec2 q) {
  return element.is_arc ? element.facing / element.radius_mm * (q - element.middle) : element.normal;
}

/// How much lower than its ends a chord may come on a round boss.
double chord_sag_mm(const WallElement &element, const ContactPath &path) {
  const Vec2 begin = path.begin - element.middle, end = path.end - element.middle;
  const double nearest = distance_to_segment_mm(element.middle, path.begin, path.end);
  return std::min(glm::length(begin), glm::length(end)) - nearest;
}

/// Contact and heading agree on the wall's side, and the wall is far from head-on.
bool is_plainly_beside(Vec2 normal, Vec2 contact, Vec2 heading) {
  constexpr double kClear = 0.3;
  const Vec2 left = left_of(heading);
  const double across = glm::dot(normal, left) * (glm::dot(contact, left) < 0.0 ? -1.0 : 1.0);
  return across < 0.0 && across * across > kClear * kClear * glm::dot(normal, normal) * glm::dot(left, left);
}

/// How far a contact path may leave its chord. An arc of angle a bows by radius·a²/8; a drifting offset turns
/// the contact by drift·a more. Growing discs are sampled: a parabola is farthest from its chord at the
/// middle, and the factor covers less even paths.
double bow_mm(const Section &section, double side, const ContactPath &path) {
  const double run = section.u1 - section.u0;
  if (section.radius_law == Section::RadiusLaw::steady && section.offset_bend == Vec2(0.0)) {
    const double angle = 2.0 * std::abs(section.stroke->half_sweep_rad) * run;
    const double speed = 2.0 * std::abs(section.stroke->half_sweep_rad) * section.stroke->radius_mm;
    const double drift = std::abs(section.offset_slope.x) + std::abs(section.offset_slope.y);
    if (drift < 0.3 * speed)
      return 0.15 * (section.stroke->radius_mm + path.radius_mm) * angle * angle +
             2.0 * path.radius_mm * drift / speed * angle;
  }
  const Disc disc = section.at(0.5 * (section.u0 + section.u1));
  const Vec2 middle = disc.centre + disc.radius_mm * contact_direction(disc, side);
  return 3.0 * glm::length(middle - 0.5 * (path.begin + path.end));
}

void place_on_line(const WallElement &element, const ContactPath &path, ContactTrack &track) {
  track.last_mm = element.position_mm(path.end);
  const double fan = element.position_mm(path.fan);
  track.window = {std::min({track.first_mm, track.last_mm, fan}) - path.bow_mm,
                  std::max({track.first_mm, track.last_mm, fan}) + path.bow_mm};
}

/// The angle passed, widened by the bow as seen from the centre.
void place_on_arc(const WallElement &element, const ContactPath &path, bool is_beyond, ContactTrack &track) {
  const auto advance = [&](Vec2 a, Vec2 b) {
    const Vec2 from = a - element.middle, to = b - element.middle;
    return element.turn * element.radius_mm * std::atan2(cross(from, to), glm::dot(from, to));
  };
  track.last_mm = track.first_mm + advance(path.begin, path.end);
  const double fan = path.fan == path.begin ? track.first_mm : track.first_mm + advance(path.begin, path.fan);
  const double nearest = distance_to_segment_mm(element.middle, path.begin, path.end);
  if (is_beyond || nearest < 4.0 * path.bow_mm + 1e-3) {
    track.window = {-element.whole_turn_mm(), element.whole_turn_mm()};
    return;
  }
  const double bow = path.bow_mm * element.radius_mm / (nearest - path.bow_mm);
  track.window = {std::min({track.first_mm, track.last_mm, fan}) - bow,
                  std::max({track.first_mm, track.last_mm, fan}) + bow};
}

} // namespace

Vec2 contact_direction(const Disc &disc, double side) {
  const double speed = glm::length(disc.velocity);
  if (!(speed > 0.0))
    return Vec2(0.0);
  const Vec2 ahead = disc.velocity / speed;
  if (disc.growth == 0.0)
    return side * left_of(ahead);
  const double tilt = std::clamp(disc.growth / speed, -1.0, 1.0);
  return side * std::sqrt(1.0 - tilt * tilt) * left_of(ahead) - tilt * ahead;
}

void ContactPath::set_fan(const Disc &before, double side) {
  fan = before.centre + before.radius_mm * contact_direction(before, side);
}

ContactPath contact_path(const Section &section, double side, const Disc &begin, const Disc &end) {
  ContactPath path;
  path.begin_direction = contact_direction(begin, side);
  path.end_direction = contact_direction(end, side);
  path.exists = path.begin_direction != Vec2(0.0) || path.end_direction != Vec2(0.0);
  path.begin = path.fan = begin.centre + begin.radius_mm * path.begin_direction;
  path.end = end.centre + end.radius_mm * path.end_direction;
  path.centre_begin = begin.centre;
  path.centre_end = end.centre;
  path.radius_mm = std::max(begin.radius_mm, end.radius_mm);
  path.heading_begin = begin.velocity - section.offset_slope - 2.0 * section.u0 * section.offset_bend;
  path.heading_end = end.velocity - section.offset_slope - 2.0 * section.u1 * section.offset_bend;
  if (!section.is_straight)
    path.bow_mm = bow_mm(section, side, path);
  return path;
}

ContactTrack track_on(const WallElement &element, const ContactPath &path, double e_most) {
  ContactTrack track;
  const bool is_beyond = element.is_arc && is_met_beyond_centre(element, path, e_most);

  // Leave out contacts above what is wanted, and those on the far side of the disc.
  if (!is_beyond) {
    track.e_least_mm =
        std::min({element.height_mm(path.begin), element.height_mm(path.end), element.height_mm(path.fan)}) -
        path.bow_mm - 1e-6;
    if (element.is_arc && element.facing > 0.0)
      track.e_least_mm -= chord_sag_mm(element, path);
    if (path.fan != path.begin) // the disc bulges between its two contacts: c²/8r, doubled for safety
      track.e_least_mm -= glm::dot(path.fan - path.begin, path.fan - path.begin) / (4.0 * path.radius_mm);
    if (track.e_least_mm > e_most)
      return track;
    const Vec2 first = normal_at(element, path.begin), last = normal_at(element, path.end);
    if (glm::dot(first, path.begin_direction) > path.turn_slack &&
        glm::dot(last, path.end_direction) > path.turn_slack)
      return track;
    track.is_plainly_seen = is_plainly_beside(first, path.begin_direction, path.heading_begin) &&
                            is_plainly_beside(last, path.end_direction, path.heading_end);
  }

  track.first_mm = element.position_mm(path.begin);
  if (element.is_arc)
    place_on_arc(element, path, is_beyond, track);
  else
    place_on_line(element, path, track);
  return track;
}

} // namespace asperity
