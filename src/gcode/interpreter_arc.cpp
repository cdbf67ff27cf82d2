// Arcs and helices: G2 and G3 by centre or by radius, with the checks on both.
#include "interpreter.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

constexpr double kCloseInMetric_mm = 0.002;              // NISTIR 6556, 3.5.3
constexpr double kCloseInInch_mm = mm_from_inch(0.0002); // the same, G20
// Posts that round to few decimals: controllers accept 0.005 mm or 0.1 % of the radius, at most 0.5 mm
// [controller documentation].
constexpr double kLoose_mm = 0.005;
constexpr double kLooseShare = 0.001;
constexpr double kLoosest_mm = 0.5;

} // namespace

/// Radii that differ by no more than this are equal in the standard.
double Interpreter::close_mm() const { return state_.is_inch ? kCloseInInch_mm : kCloseInMetric_mm; }

/// Radii that differ by no more than this are taken as equal, with a warning.
double Interpreter::loose_mm(double radius_mm) const {
  const double loose_mm = std::min(std::max(kLoose_mm, kLooseShare * radius_mm), kLoosest_mm);
  return complaints_.strict() ? close_mm() : std::max(loose_mm, close_mm());
}

void Interpreter::run_arc() {
  const ArcEnds ends = arc_ends();
  if (!check_arc_words() || !is_feed_ready()) {
    writer_.place_tip(ends.end);
    is_tip_doubtful_ = true;
    return;
  }
  if (block_.has('R'))
    run_radius_arc(ends);
  else
    run_centre_arc(ends);
  // Whatever went wrong with the arc, its end is where the program goes on from.
  writer_.place_tip(ends.end);
  note_doubt_cleared();
}

ArcEnds Interpreter::arc_ends() const {
  return {writer_.tip(), target(), state_.plane, orders_.motion == 20};
}

bool Interpreter::check_arc_words() {
  const PlaneAxes axes = axes_of(state_.plane);
  const bool has_end = block_.has("XYZ"[axes.first]) || block_.has("XYZ"[axes.second]);
  const bool has_centre = block_.has("IJK"[axes.first]) || block_.has("IJK"[axes.second]);
  const char stray = "IJK"[axes.third];
  const std::string name = code_name('G', orders_.motion);
  const bool is_p_elsewhere =
      orders_.code(Group::non_modal) == 40 || orders_.code(Group::path_control) == 640;
  if (block_.has('P') && block_.value('P') != 1.0 && !is_p_elsewhere)
    complaints_.error(block_.column('P'), name + " with P (turns of a helix) is not followed",
                      "Write each turn as an arc of its own.");
  else if (block_.has('R') && (has_centre || block_.has(stray)))
    complaints_.error(block_.column('R'), name + " with both a radius and a centre",
                      "Keep R, or keep I, J, K.");
  else if (block_.has(stray))
    complaints_.error(block_.column(stray), fmt::format("{} does not belong to the plane in force", stray),
                      "Choose the plane with G17 (I J), G18 (I K) or G19 (J K).");
  else if (!block_.has('R') && !has_centre)
    complaints_.error(motion_column(), name + " without a centre or radius",
                      fmt::format("Add {} and {}, or R.", "IJK"[std::min(axes.first, axes.second)],
                                  "IJK"[std::max(axes.first, axes.second)]));
  else if (block_.has('R') && !has_end)
    complaints_.error(block_.column('R'), name + " by radius without an end in its plane",
                      "A full circle needs a centre: write I and J instead of R.");
  else if (!has_end)
    complaints_.departure_once(Once::full_circle_by_silence, motion_column(),
                               name + " without an end in its plane is taken as a full circle",
                               "Repeat the start point's X and Y.");
  return !complaints_.line_failed();
}

void Interpreter::run_radius_arc(const ArcEnds &ends) {
  const PlaneAxes axes = axes_of(ends.plane);
  const Vec2 begin = axes.in_plane(ends.begin);
  const Vec2 end = axes.in_plane(ends.end);
  const double radius_mm = mm(block_.value('R'));
  const double half_chord_mm = 0.5 * glm::distance(begin, end);
  const double over_mm = half_chord_mm - std::abs(radius_mm);
  const std::optional<Vec2> centre =
      centre_from_radius(begin, end, radius_mm, ends.is_clockwise, loose_mm(std::abs(radius_mm)));
  if (centre && accept_mismatch(over_mm, std::abs(radius_mm)))
    return writer_.feed(arc_about(ends, *centre), motion_column());
  if (is_tip_doubtful_)
    return;
  if (over_mm > 0.0 && half_chord_mm > 0.0)
    complaints_.error(block_.column('R'),
                      fmt::format("no arc of radius {:.4f} mm joins points {:.4f} mm apart",
                                  std::abs(radius_mm), 2.0 * half_chord_mm),
                      "Check R and the end point; R must be at least half their distance.");
  else
    complaints_.error(block_.column('R'), "an arc by radius that ends where it begins",
                      "A full circle needs a centre: write I and J instead of R.");
}

Vec2 Interpreter::centre_from_words(const ArcEnds &ends, bool is_absolute) const {
  const PlaneAxes axes = axes_of(ends.plane);
  const Vec3 from = is_absolute ? frames_.shift() : ends.begin;
  const auto along = [&](int axis) {
    return from[axis] + (block_.has("IJK"[axis]) ? mm(block_.value("IJK"[axis])) : 0.0);
  };
  return {along(axes.first), along(axes.second)};
}

void Interpreter::run_centre_arc(const ArcEnds &ends) {
  const PlaneAxes axes = axes_of(ends.plane);
  const bool has_both = block_.has("IJK"[axes.first]) && block_.has("IJK"[axes.second]);
  if (state_.has_absolute_centres && !has_both)
    return complaints_.error(motion_column(), "an absolute centre (G90.1) with one word missing",
                             "Give both centre words, or use G91.1.");
  const Vec2 begin = axes.in_plane(ends.begin);
  const Vec2 centre = centre_from_words(ends, state_.has_absolute_centres);
  const double radius_mm = glm::distance(begin, centre);
  if (radius_mm == 0.0)
    return complaints_.error(motion_column(), "an arc of radius zero", "Check its centre words.");
  if (accept_mismatch(radius_mismatch_mm(begin, axes.in_plane(ends.end), centre), radius_mm))
    writer_.feed(arc_about(ends, centre), motion_column());
  else if (!is_tip_doubtful_)
    refuse_mismatch(ends, centre);
}

bool Interpreter::accept_mismatch(double mismatch_mm, double radius_mm) {
  if (mismatch_mm <= close_mm())
    return true;
  if (mismatch_mm > loose_mm(radius_mm))
    return false;
  complaints_.warning_once(
      Once::loose_arc, motion_column(),
      fmt::format("the arc's end misses its circle by {:.4f} mm; taken as rounding", mismatch_mm),
      "Have the post write more decimals.");
  return true;
}

void Interpreter::refuse_mismatch(const ArcEnds &ends, Vec2 centre) {
  const PlaneAxes axes = axes_of(ends.plane);
  const Vec2 begin = axes.in_plane(ends.begin);
  const Vec2 end = axes.in_plane(ends.end);
  const double from_begin_mm = glm::distance(begin, centre);
  const Vec2 other = centre_from_words(ends, !state_.has_absolute_centres);
  const double other_mm = glm::distance(begin, other);
  const bool fits_otherwise = other_mm > 0.0 && radius_mismatch_mm(begin, end, other) <= loose_mm(other_mm);
  std::string remedy = "Check the end and the centre; I, J, K count from the start of the arc.";
  if (fits_otherwise)
    remedy = state_.has_absolute_centres
                 ? "The centre fits as a distance from the start: add G91.1 at the head."
                 : "The centre fits as an absolute place: add G90.1 at the head.";
  complaints_.error(motion_column(),
                    fmt::format("the arc's radii differ: {:.4f} mm at its start, {:.4f} mm at its end",
                                from_begin_mm, glm::distance(end, centre)),
                    std::move(remedy));
}

} // namespace asperity::gcode
