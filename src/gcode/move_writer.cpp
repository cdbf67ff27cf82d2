// Turns steps of the interpreter into moves of the program, with the feed and spindle in force.
#include "move_writer.h"

#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

constexpr double kFarthest_mm = 1e5;

} // namespace

Move &MoveWriter::append(MoveKind kind, const Curve &curve) {
  Move &move = program_.moves.emplace_back();
  move.curve = curve;
  move.kind = kind;
  move.line = static_cast<std::uint32_t>(complaints_.line());
  move.tool = static_cast<std::uint16_t>(state_.tool);
  move.turn = turn_;
  move.spindle_rpm = turn_ == SpindleTurn::off ? 0.0 : state_.spindle_rpm;
  move.control = state_.control;
  move.blend_tolerance_mm = state_.control == PathControl::blend ? state_.blend_tolerance_mm : -1.0;
  move.in_canned_cycle = in_cycle_;
  tip_ = curve.end;
  return move;
}

bool MoveWriter::is_in_range(Vec3 to, int column) {
  for (int axis = 0; axis < 3; ++axis) {
    if (std::abs(to[axis]) <= kFarthest_mm)
      continue;
    complaints_.error(column, fmt::format("{} = {:g} mm is out of all range", "XYZ"[axis], to[axis]),
                      "Check the number, its decimal point and the units (G20, G21).");
    return false;
  }
  return true;
}

void MoveWriter::check_before_first_move(int column) {
  if (!state_.units_said)
    complaints_.warning_once(Once::units_not_said, column,
                             fmt::format("neither G20 nor G21 before the first move; {} taken",
                                         state_.is_inch ? "inches" : "millimetres"),
                             "Put G21 (millimetres) or G20 (inches) at the head of the program.");
}

void MoveWriter::rapid(Vec3 to, int column) {
  if (to == tip_ || !is_in_range(to, column))
    return;
  check_before_first_move(column);
  append(MoveKind::rapid, Curve::line(tip_, to));
}

void MoveWriter::feed(const Curve &curve, int column) {
  const double length_mm = curve.length_mm();
  if (length_mm == 0.0 || !is_in_range(curve.end, column))
    return;
  check_before_first_move(column);
  check_spindle(column);
  const double feed = feed_mm_per_min(length_mm, column);
  append(MoveKind::feed, curve).feed_mm_per_min = feed;
}

void MoveWriter::dwell(double seconds) {
  if (seconds > 0.0)
    append(MoveKind::dwell, Curve::line(tip_, tip_)).dwell_s = seconds;
}

double MoveWriter::feed_mm_per_min(double length_mm, int column) {
  if (state_.feed <= 0.0) {
    complaints_.error_once(Once::feed_unknown, column, "a feed move before any F above zero",
                           "Put an F word on this line or before it, such as F600.");
    return 0.0;
  }
  switch (state_.feed_mode) {
  case FeedMode::inverse_time:
    return state_.feed * length_mm;
  case FeedMode::per_turn:
    if (turn_ == SpindleTurn::off || state_.spindle_rpm <= 0.0)
      complaints_.error_once(Once::feed_per_turn_unknown, column,
                             "feed per turn (G95) with the spindle stopped",
                             "Start the spindle with S and M3 first.");
    return state_.feed * state_.spindle_rpm;
  case FeedMode::per_minute:
    break;
  }
  return state_.feed;
}

void MoveWriter::check_spindle(int column) {
  if (turn_ == SpindleTurn::off || state_.spindle_rpm <= 0.0)
    complaints_.warning_once(Once::spindle_off, column, "a feed move while the spindle is not turning",
                             "Put S (turns per minute) and M3 before the first cut.");
}

} // namespace asperity::gcode
