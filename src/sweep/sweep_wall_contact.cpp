// Contact paths of a moving, growing disc and their projection on outline elements.
#include "sweep_wall_contact.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double distance_to_segment_mm(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 along = b - a;
  const double square = glm::dot(along, along);
  const double u = square > 0.0 ? std::clamp(glm::dot(p - a, along) / square, 0.0, 1.0) : 0.0;
  return glm::length(p - a - u * along);
}

/// Rays that run through the centre of their arc can be met beyond it.
bool is_met_beyond_centre(const WallElement &element, const ContactPath &path, double e_most) {
  if (element.facing < 0.0)
    return element.radius_mm <= e_most + 1e-6;
  return distance_to_segment_mm(element.middle, path.centre_begin, path.centre_end) <
         path.radius_mm + path.bow_mm;
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
  path.middle = 0.5 * (path.begin + path.end);
  if (!section.is_straight) {
    const Disc disc = section.at(0.5 * (section.u0 + section.u1));
    const Vec2 middle = disc.centre + disc.radius_mm * contact_direction(disc, side);
    // A parabola's largest distance from its chord is at its middle; the factor covers less even paths.
    const double factor = section.is_round ? 1.2 : 3.0;
    path.bow_mm = factor * glm::length(middle - path.middle);
    path.middle = middle;
  }
  return path;
}

ContactTrack track_on(const WallElement &element, const ContactPath &path, double e_most) {
  ContactTrack track;
  const bool is_beyond = element.is_arc && is_met_beyond_centre(element, path, e_most);

  // Leave out contacts above what is wanted, and those on the far side of the disc.
  if (!is_beyond) {
    double lowest =
        std::min({element.height_mm(path.begin), element.height_mm(path.end), element.height_mm(path.fan)});
    if (lowest > e_most && element.is_arc && element.facing > 0.0)
      lowest = distance_to_segment_mm(element.middle, path.begin, path.end) - element.radius_mm;
    if (lowest > e_most + path.bow_mm + 1e-6)
      return track;
    const auto is_near_side = [&](Vec2 q, Vec2 direction) {
      const Vec2 normal = element.is_arc ? element.facing * (q - element.middle) : element.normal;
      return glm::dot(normal, direction) < 1e-6;
    };
    if (!is_near_side(path.begin, path.begin_direction) && !is_near_side(path.end, path.end_direction))
      return track;
  }

  // Straight elements: project. Arcs: the angle passed, widened by the bow as seen from the centre.
  track.first_mm = element.position_mm(path.begin);
  if (!element.is_arc) {
    track.last_mm = element.position_mm(path.end);
    const double fan = element.position_mm(path.fan);
    track.window = {std::min({track.first_mm, track.last_mm, fan}) - path.bow_mm,
                    std::max({track.first_mm, track.last_mm, fan}) + path.bow_mm};
    return track;
  }
  const auto advance = [&](Vec2 a, Vec2 b) {
    const Vec2 from = a - element.middle, to = b - element.middle;
    return element.turn * element.radius_mm * std::atan2(cross(from, to), glm::dot(from, to));
  };
  track.last_mm = track.first_mm + advance(path.begin, path.end);
  const double fan = path.fan == path.begin ? track.first_mm : track.first_mm + advance(path.begin, path.fan);
  const double nearest = distance_to_segment_mm(element.middle, path.begin, path.end);
  if (is_beyond || nearest < 4.0 * path.bow_mm + 1e-3) {
    track.window = {-element.whole_turn_mm(), element.whole_turn_mm()};
    return track;
  }
  const double bow = path.bow_mm * element.radius_mm / (nearest - path.bow_mm);
  track.window = {std::min({track.first_mm, track.last_mm, fan}) - bow,
                  std::max({track.first_mm, track.last_mm, fan}) + bow};
  return track;
}

} // namespace asperity
