// Canned cycles: which words hold over a row of holes, their checks, and the unfolding into moves.
#include "interpreter.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

/// More than any real row or hole; keeps a mistyped L or Q from filling the memory.
constexpr int kMostRepeats = 1000;
constexpr double kMostPecks = 10000.0;

bool has_dwell(Code cycle) { return cycle == 820 || cycle == 860 || cycle == 880 || cycle == 890; }

} // namespace

void Interpreter::run_cycle() {
  if (!block_.has_axis_words())
    return complaints_.error(motion_column(), code_name('G', orders_.motion) + " without X, Y or Z",
                             "Say where the hole is.");
  note_doubt_cleared();
  if (!read_cycle_words() || !check_cycle())
    return;
  const int repeats = cycle_repeats();
  if (repeats > 0)
    drill(hole_from_words(), repeats);
}

/// Words given on this line replace those held from the holes before it.
bool Interpreter::read_cycle_words() {
  const int axis = axes_of(state_.plane).third;
  const char depth = "XYZ"[axis];
  CycleWords &cycle = state_.cycle;
  const bool is_first = cycle.code != orders_.motion;
  if (is_first && (!block_.has(depth) || !block_.has('R'))) {
    complaints_.error(
        motion_column(),
        fmt::format("{} without {}", code_name('G', orders_.motion), block_.has(depth) ? 'R' : depth),
        fmt::format("The first hole needs {} (bottom) and R (retract height).", depth));
    return false;
  }
  if (is_first) {
    const bool continues_row = cycle.code != kNoCode;
    const double initial_mm = continues_row ? cycle.initial_mm : writer_.tip()[axis];
    cycle = CycleWords{};
    cycle.code = orders_.motion;
    cycle.initial_mm = initial_mm;
  }
  if (block_.has(depth))
    cycle.bottom_mm = mm(block_.value(depth));
  if (block_.has('R'))
    cycle.retract_mm = mm(block_.value('R'));
  if (block_.has('Q')) {
    cycle.peck_mm = mm(block_.value('Q'));
    cycle.has_peck = true;
  }
  if (block_.has('P')) {
    cycle.dwell_s = block_.value('P');
    cycle.has_dwell = true;
  }
  return true;
}

bool Interpreter::check_cycle() {
  const CycleWords &cycle = state_.cycle;
  const std::string name = code_name('G', cycle.code);
  const int column = motion_column();
  const double over_mm = state_.is_absolute ? cycle.retract_mm - cycle.bottom_mm : -cycle.bottom_mm;
  if (state_.feed_mode == FeedMode::inverse_time)
    complaints_.error(column, name + " in G93", "Use G94 for cycles.");
  if (over_mm < 0.0)
    complaints_.error(column, name + " with R below the bottom of the hole",
                      "R is the height above the work.");
  if (cycle.code == 830 && (!cycle.has_peck || cycle.peck_mm <= 0.0))
    complaints_.error(column, "G83 without a Q above zero", "Q is the depth of one peck.");
  else if (cycle.code == 830 && over_mm / cycle.peck_mm > kMostPecks)
    complaints_.error(column, fmt::format("G83 with {:.0f} pecks", over_mm / cycle.peck_mm), "Check Q.");
  if (has_dwell(cycle.code) && !cycle.has_dwell)
    complaints_.error(column, name + " without P", "P is the wait at the bottom, in seconds.");
  if (cycle.has_dwell && cycle.dwell_s < 0.0)
    complaints_.error(column, name + " with a negative P", "Write P without a minus sign.");
  return check_cycle_spindle() && !complaints_.line_failed();
}

bool Interpreter::check_cycle_spindle() {
  const Code code = state_.cycle.code;
  const bool needs_clockwise = code == 840;
  const bool needs_turning = code == 860 || code == 870 || code == 880;
  if (needs_clockwise && state_.turn != SpindleTurn::clockwise)
    complaints_.error(motion_column(), "G84 (right-hand tapping) without M3", "Start the spindle with M3.");
  else if (needs_turning && state_.turn == SpindleTurn::off)
    complaints_.error(motion_column(), code_name('G', code) + " with the spindle stopped",
                      "Start it with M3 or M4.");
  return !complaints_.line_failed();
}

/// L; 0 after an error.
int Interpreter::cycle_repeats() {
  return block_.has('L') ? std::max(0, whole_word('L', 1, kMostRepeats)) : 1;
}

Hole Interpreter::hole_from_words() const {
  const PlaneAxes axes = axes_of(state_.plane);
  const CycleWords &cycle = state_.cycle;
  Hole hole;
  hole.cycle = cycle.code;
  hole.axis = axes.third;
  hole.tip = writer_.tip();
  hole.place = target();
  // R and Z under G91: R from the present height, Z from R [NISTIR 6556, 3.5.16.2].
  const double above_mm = state_.is_absolute ? frames_.shift()[axes.third] : hole.tip[axes.third];
  hole.retract_mm = above_mm + cycle.retract_mm;
  hole.bottom_mm = (state_.is_absolute ? above_mm : hole.retract_mm) + cycle.bottom_mm;
  hole.clear_mm =
      state_.returns_to_retract_height ? hole.retract_mm : std::max(hole.retract_mm, cycle.initial_mm);
  hole.peck_mm = cycle.peck_mm;
  hole.dwell_s = has_dwell(cycle.code) ? cycle.dwell_s : 0.0;
  hole.turn = state_.turn;
  for (const int axis : {axes.first, axes.second})
    hole.side_step[axis] = block_.has("IJK"[axis]) ? mm(block_.value("IJK"[axis])) : 0.0;
  const char back = "IJK"[axes.third];
  const double back_from_mm = state_.is_absolute ? frames_.shift()[axes.third] : hole.bottom_mm;
  hole.back_mm = block_.has(back) ? back_from_mm + mm(block_.value(back)) : hole.bottom_mm;
  return hole;
}

void Interpreter::drill(Hole hole, int repeats) {
  const PlaneAxes axes = axes_of(state_.plane);
  Vec3 step = hole.place - hole.tip;
  if (state_.is_absolute)
    step = Vec3(0.0);
  step[axes.third] = 0.0;
  if (hole.cycle == 830 && repeats * peck_count(hole) > kMostPecks)
    return complaints_.error(block_.column('L'), "too many pecks on one line", "Check L and Q.");
  writer_.set_in_cycle(true);
  for (int i = 0; i < repeats; ++i) {
    hole.tip = writer_.tip();
    steps_.clear();
    unfold_hole(hole, steps_);
    for (const CycleStep &next : steps_) {
      writer_.set_turn(next.turn);
      if (next.kind == MoveKind::rapid)
        writer_.rapid(next.to, motion_column());
      else if (next.kind == MoveKind::feed)
        writer_.feed(next.to, motion_column());
      else
        writer_.dwell(next.dwell_s);
    }
    hole.place += step;
  }
  writer_.use_turn_in_force();
  writer_.set_in_cycle(false);
}

} // namespace asperity::gcode
