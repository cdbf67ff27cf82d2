// Straight motion: G0, G1 and G53, and the settling of which motion a line makes.
#include "interpreter.h"

#include <fmt/format.h>

namespace asperity::gcode {

/// What must be settled before the first move: the output frame, and the tool when no M6 ever named it.
void Interpreter::begin_motion() {
  if (is_placed())
    return;
  frames_.freeze_output_frame();
  if (state_.tool == 0 && state_.selected_tool > 0 && !state_.tool_was_changed) {
    complaints_.warning_once(Once::tool_never_changed, motion_column(),
                             fmt::format("T{} without M6; taken as in the spindle", state_.selected_tool),
                             fmt::format("Write T{} M6.", state_.selected_tool));
    state_.tool = state_.selected_tool;
  }
}

Vec3 Interpreter::target() const {
  const Vec3 shift = frames_.shift();
  Vec3 to = writer_.tip();
  for (int axis = 0; axis < 3; ++axis) {
    const char letter = "XYZ"[axis];
    if (!block_.has(letter))
      continue;
    const double word_mm = mm(block_.value(letter));
    to[axis] = state_.is_absolute ? word_mm + shift[axis] : to[axis] + word_mm;
  }
  return to;
}

void Interpreter::run_motion() {
  const bool is_machine = orders_.code(Group::non_modal) == 530;
  if (orders_.has(Group::motion)) {
    state_.motion = orders_.code(Group::motion);
    if (!is_cycle(state_.motion))
      state_.cycle.code = kNoCode;
  }
  if (is_machine)
    return move_in_machine_coordinates();
  if (orders_.motion == kNoCode)
    return;
  if (orders_.motion == 800) {
    const Code single = orders_.code(Group::non_modal);
    if (block_.has_axis_words() && (single == kNoCode || !takes_axis_words(single)))
      complaints_.error(block_.first_axis_column(), "axis words while G80 is in force",
                        "Say how to move: put G0 or G1 on the line.");
    return;
  }
  begin_motion();
  if (is_arc(orders_.motion))
    run_arc();
  else if (is_cycle(orders_.motion))
    run_cycle();
  else
    run_straight();
}

void Interpreter::move_in_machine_coordinates() {
  const int column = orders_.column(Group::non_modal);
  const Code motion = orders_.has(Group::motion) ? orders_.code(Group::motion) : state_.motion;
  if (motion != 0 && motion != 10)
    return complaints_.error(column, "G53 without G0 or G1 in force", "Write G53 G0 X.. Y.. Z...");
  if (!block_.has_axis_words())
    return complaints_.error(column, "G53 without X, Y or Z", "Say where to go, or take G53 out.");
  begin_motion();
  if (!frames_.is_g54_origin_set())
    complaints_.warning_once(
        Once::machine_zero_unknown, column,
        "G53 goes to machine coordinates, taken as those of G54: the origin of G54 is not known",
        "Set it with G10 L2 P1 at the head, or leave the machine by G28.");
  Vec3 axes = writer_.tip();
  for (int axis = 0; axis < 3; ++axis) {
    if (block_.has("XYZ"[axis]))
      axes[axis] = frames_.tip_from_machine(Vec3(mm(block_.value("XYZ"[axis]))))[axis];
  }
  if (motion == 0)
    writer_.rapid(axes, column);
  else if (is_feed_ready())
    writer_.feed(axes, column);
}

/// In inverse-time mode the time belongs to the one line it stands on.
bool Interpreter::is_feed_ready() {
  if (state_.feed_mode != FeedMode::inverse_time || block_.has('F'))
    return true;
  complaints_.error(motion_column(), "no F on a feed move in G93",
                    "Give every G1, G2 and G3 line its own F in G93.");
  return false;
}

void Interpreter::run_straight() {
  if (!block_.has_axis_words()) {
    complaints_.departure_once(Once::mode_word_alone, motion_column(),
                               code_name('G', orders_.motion) + " without X, Y or Z only sets the mode",
                               "Give it axis words, or take it out.");
    return;
  }
  note_doubt_cleared();
  if (orders_.motion == 0)
    writer_.rapid(target(), block_.first_axis_column());
  else if (is_feed_ready())
    writer_.feed(target(), block_.first_axis_column());
}

void Interpreter::note_doubt_cleared() {
  if (state_.is_absolute && block_.has('X') && block_.has('Y'))
    is_tip_doubtful_ = false;
}

} // namespace asperity::gcode
