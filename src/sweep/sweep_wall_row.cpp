// Follows the path over one row: contacts of strokes, discs at joints and ends.
#include "sweep_wall_row.h"

#include "sweep_wall_contact.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kStill_mm = 1e-12;

bool is_same_disc(const Disc &a, const Disc &b, double within_mm) {
  return glm::length(a.centre - b.centre) <= within_mm && std::abs(a.radius_mm - b.radius_mm) <= within_mm;
}

/// A disc that grows faster than it moves covers all the discs before it; one that shrinks faster, all after
/// it.
constexpr double kGrowth_mm = 1e-9; // over a stroke: less is no growth, only rounding
bool outgrows(const Disc &disc) { return disc.growth > glm::length(disc.velocity) + kGrowth_mm; }
bool dwindles(const Disc &disc) { return -disc.growth > glm::length(disc.velocity) + kGrowth_mm; }

/// Where offsets differ by side, the commanded motion must go on too, or the wall changes sides at the joint.
bool is_same_heading(Vec2 a, Vec2 b) {
  const double along = glm::dot(a, b), least = std::cos(kSmoothTurn_rad);
  return along > 0.0 && along * along > least * least * glm::dot(a, a) * glm::dot(b, b);
}

/// Do both motions touch the wall in nearly the same direction, on either side?
bool is_smooth_joint(const Disc &before, const Disc &after, bool sees_alike) {
  if (sees_alike && ((outgrows(before) && outgrows(after)) || (dwindles(before) && dwindles(after))))
    return true;
  // Neither has a contact that could go on from or to the other's, whatever their directions.
  if (outgrows(before) || dwindles(before) || outgrows(after) || dwindles(after))
    return false;
  for (const double side : {1.0, -1.0}) {
    const Vec2 a = contact_direction(before, side), b = contact_direction(after, side);
    if (!(glm::dot(a, b) > std::cos(kSmoothTurn_rad)))
      return false;
  }
  return true;
}

/// The contact's position on the wall tells nearly which u serves the ray.
Entry lowest_entry(const Section &section, double side, const ContactTrack &track, double position_mm,
                   const Ray &ray) {
  if (section.is_straight)
    return lowest_straight(section, side, ray);
  if (section.is_round)
    return lowest_round(section, side, ray);
  const double length = track.last_mm - track.first_mm;
  const double share = length != 0.0 ? (position_mm - track.first_mm) / length : 0.0;
  const double u_guess = section.u0 + (section.u1 - section.u0) * share;
  return track.is_plainly_seen ? lowest_smooth(section, u_guess, ray)
                               : lowest_about_head_on(section, u_guess, ray);
}

} // namespace

WallRow::WallRow(const WallPlan &plan, const ColumnFinder &columns, const WallChart &chart, double z_mm,
                 LaneCells &cells, std::size_t lane, SectionList &sections)
    : plan_(plan), columns_(columns), chart_(chart), z_mm_(z_mm), cells_(cells), lane_(lane),
      sections_(sections) {}

void WallRow::start(WallSide side) {
  side_ = side;
  end_ = {};
}

void WallRow::follow(std::size_t i) {
  const Stroke &stroke = plan_.strokes[i];
  if (stroke.joins_previous && !end_.is_set && i > 0 && plan_.reaches[i - 1].count > 0)
    recall(i - 1);
  find_sections(stroke, plan_.cutters[stroke.cutter], side_, z_mm_, sections_);
  if (sections_.count == 0)
    return close();
  for (std::size_t k = 0; k < sections_.count; ++k) {
    const bool starts_stroke = k == 0;
    const bool is_joined = starts_stroke ? stroke.joins_previous && end_.is_set && end_.is_at_stroke_end &&
                                               end_.stroke + 1 == i && sections_.all[0].u0 == 0.0
                                         : true;
    follow_section(sections_.all[k], i, is_joined);
  }
}

void WallRow::recall(std::size_t i) {
  const Stroke &stroke = plan_.strokes[i];
  find_sections(stroke, plan_.cutters[stroke.cutter], side_, z_mm_, sections_);
  if (sections_.count == 0)
    return;
  const Section &last = sections_.all[sections_.count - 1];
  if (last.u1 == 1.0)
    end_ = {true, true, false, last.at(1.0), 1.0, i, stroke.owner};
}

void WallRow::cut_ray(std::size_t i, std::size_t column, double u_near, StrokeOwners owners) {
  const Stroke &stroke = plan_.strokes[i];
  find_sections(stroke, plan_.cutters[stroke.cutter], side_, z_mm_, sections_);
  const Ray ray{chart_.foot[column], chart_.normal[column]};
  for (std::size_t k = 0; k < sections_.count; ++k) {
    const Entry entry = lowest_smooth(sections_.all[k], u_near, ray);
    lower(column, entry.e_mm, entry.u <= 0.0 ? owners.begin : owners.on);
  }
}

void WallRow::close() {
  if (end_.is_set && !dwindles(end_.disc)) {
    const Stroke &stroke = plan_.strokes[end_.stroke];
    if (side_ == WallSide::left || stroke.has_two_sides) {
      const Seen seen = end_.is_still ? Seen{} : seen_from(end_.stroke, end_.u);
      cut_disc(end_.stroke, end_.disc, seen, seen, end_.owner);
    }
  }
  end_ = {};
}

void WallRow::follow_section(const Section &section, std::size_t i, bool is_joined) {
  const Stroke &stroke = *section.stroke;
  const Disc begin = section.at(section.u0), end = section.at(section.u1);
  const bool is_at_stroke_end = section.u1 == 1.0;

  // Standing still: one more owner of the disc where the path already is.
  if (is_same_disc(begin, end, kStill_mm)) {
    const bool is_held = is_joined && is_same_disc(end_.disc, begin, kSamePlace_mm);
    if (!is_held) {
      close();
      end_ = {true, is_at_stroke_end, true, begin, section.u1, i, stroke.owner};
    }
    end_.owner = std::min(end_.owner, stroke.owner);
    end_.stroke = i;
    end_.u = section.u1;
    end_.is_at_stroke_end = is_at_stroke_end;
    return;
  }

  const std::uint32_t begin_owner = is_joined ? std::min(end_.owner, stroke.owner) : stroke.owner;
  const bool has_fan = meet_joint(section, i, begin, is_joined);
  cut_contacts(section, i, begin, end, has_fan, begin_owner);
  cut_crossing(section, i, begin, end);
  end_ = {true, is_at_stroke_end, false, end, section.u1, i, stroke.owner};
}

/// Cuts whole discs where the path begins, breaks or turns. True when the joint is smooth, so that the
/// contacts of the new section, begun a little earlier, cover it.
bool WallRow::meet_joint(const Section &section, std::size_t i, const Disc &begin, bool is_joined) {
  const Stroke &stroke = *section.stroke;
  const bool is_closed = is_joined && is_same_disc(end_.disc, begin, kSamePlace_mm);
  const Seen seen = seen_from(i, section.u0);
  if (!is_closed) {
    const bool was_two_sided = end_.is_set && plan_.strokes[end_.stroke].has_two_sides;
    close();
    if (!outgrows(begin) && (side_ == WallSide::left || stroke.has_two_sides || was_two_sided))
      cut_disc(i, begin, seen, seen, stroke.owner);
    return false;
  }
  const bool is_shared = !stroke.has_two_sides && !plan_.strokes[end_.stroke].has_two_sides;
  const bool sees_alike =
      is_shared || end_.stroke == i || plan_.reaches[i].begins_smoothly ||
      is_same_heading(plan_.strokes[end_.stroke].plan_velocity(end_.u), stroke.plan_velocity(section.u0));
  if (!end_.is_still && sees_alike && is_smooth_joint(end_.disc, begin, is_shared))
    return !outgrows(begin) && !dwindles(begin);
  if (is_shared && (side_ == WallSide::right || outgrows(begin) || dwindles(end_.disc)))
    return false;
  // Where one motion covers this disc with its own larger discs, only what the other sees is left to cut.
  const Seen seen_before = end_.is_still ? Seen{} : seen_from(end_.stroke, end_.u);
  const std::uint32_t owner = std::min(end_.owner, stroke.owner);
  if (!outgrows(begin))
    cut_disc(i, begin, seen, dwindles(end_.disc) ? seen : seen_before, owner);
  else if (!dwindles(end_.disc))
    cut_disc(i, begin, seen_before, seen_before, owner);
  return false;
}

WallRow::Seen WallRow::seen_from(std::size_t i, double u) const {
  // On an arc that turns head-on to a wall just at its end, both sides have been seen a moment before.
  constexpr double kHeadOn = 1e-9;
  const Stroke &stroke = plan_.strokes[i];
  if (!stroke.has_two_sides)
    return {};
  const Vec2 velocity = stroke.plan_velocity(u);
  return {false, sign_of(side_) * left_of(velocity), side_ == WallSide::left,
          stroke.is_arc ? kHeadOn * glm::length(velocity) : 0.0};
}

bool WallRow::Seen::includes(Vec2 normal) const {
  if (by_all)
    return true;
  const double facing = glm::dot(normal, away) - slack;
  return is_strict ? facing < 0.0 : facing <= 0.0;
}

void WallRow::lower(std::size_t column, double e, std::uint32_t by) {
  if (!(e <= chart_.band_mm))
    return;
  const auto value = static_cast<float>(std::max(e, -chart_.band_mm));
  if (value < envelope_mm(column)) {
    envelope_mm(column) = value;
    owner(column) = by;
  } else if (value == envelope_mm(column) && by < owner(column)) {
    owner(column) = by;
  }
}

void WallRow::cut_disc(std::size_t i, const Disc &disc, const Seen &seen, const Seen &or_seen,
                       std::uint32_t owner) {
  const Reach &reach = plan_.reaches[i];
  for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k) {
    const WallElement &element = plan_.elements[plan_.meetings[k].element];
    const Window window = window_of_disc(element, disc.centre, disc.radius_mm, plan_.e_most_mm);
    if (window.is_empty())
      continue;
    columns_.for_columns(element, window, [&](std::size_t column, double) {
      const Ray ray{chart_.foot[column], chart_.normal[column]};
      if (seen.includes(ray.normal) || or_seen.includes(ray.normal))
        lower(column, disc_entry_mm(disc.centre, disc.radius_mm, ray), owner);
    });
  }
}

void WallRow::cut_contacts(const Section &section, std::size_t i, const Disc &begin, const Disc &end,
                           bool has_fan, std::uint32_t begin_owner) {
  const Stroke &stroke = *section.stroke;
  const Reach &reach = plan_.reaches[i];
  // A growing cutter can touch ahead, where the other side of the motion sees the wall.
  const bool takes_both = stroke.has_two_sides && section.radius_law != Section::RadiusLaw::steady;
  for (const WallSide contact_side : kWallSides) {
    if (contact_side != side_ && !takes_both)
      continue;
    ContactPath path = contact_path(section, sign_of(contact_side), begin, end);
    if (!path.exists)
      continue;
    if (has_fan)
      path.set_fan(end_.disc, sign_of(contact_side));
    for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k) {
      const Meeting &meeting = plan_.meetings[k];
      if (!takes_both && !meeting.faces(contact_side))
        continue;
      const WallElement &element = plan_.elements[meeting.element];
      const ContactTrack track = track_on(element, path, plan_.e_most_mm);
      if (track.window.is_empty() || (track.is_plainly_seen && contact_side != side_))
        continue;
      columns_.for_columns(element, track.window, [&](std::size_t column, double position) {
        if (envelope_mm(column) < track.e_least_mm)
          return;
        const Ray ray{chart_.foot[column], chart_.normal[column]};
        const Entry entry = lowest_entry(section, sign_of(contact_side), track, position, ray);
        if (!stroke.has_two_sides || track.is_plainly_seen || seen_from(i, entry.u).includes(ray.normal))
          lower(column, entry.e_mm, entry.u <= section.u0 ? begin_owner : stroke.owner);
      });
    }
  }
}

void WallRow::cut_crossing(const Section &section, std::size_t i, const Disc &begin, const Disc &end) {
  const Stroke &stroke = *section.stroke;
  if (!stroke.has_two_sides && side_ == WallSide::right)
    return;
  const CrossingBounds bounds(section, begin, end);
  const Reach &reach = plan_.reaches[i];
  for (std::uint32_t k = reach.first; k < reach.first + reach.count; ++k) {
    if (!plan_.meetings[k].may_cross)
      continue;
    const WallElement &element = plan_.elements[plan_.meetings[k].element];
    const Window window = window_of_discs(element, begin.centre, end.centre, bounds.reach_mm());
    columns_.for_columns(element, window, [&](std::size_t column, double) {
      const Ray ray{chart_.foot[column], chart_.normal[column]};
      if ((envelope_mm(column) <= -chart_.band_mm && owner(column) <= stroke.owner) ||
          !bounds.allow(ray, envelope_mm(column)))
        return;
      const Entry entry = lowest_at_crossing(section, ray);
      if (entry.e_mm != kNotCut && (!stroke.has_two_sides || seen_from(i, entry.u).includes(ray.normal)))
        lower(column, entry.e_mm, stroke.owner);
    });
  }
}

} // namespace asperity
