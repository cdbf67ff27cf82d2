// Work offsets, tool lengths, shifts and homes: the part of the interpreter that says where zero is.
#include "interpreter.h"

#include <fmt/format.h>

namespace asperity::gcode {

double Interpreter::table_length_mm(int slot) {
  const auto row = options_.length_offset_mm.find(slot);
  if (slot == 0)
    return 0.0;
  if (row != options_.length_offset_mm.end())
    return row->second;
  if (options_.length_offset_mm.empty())
    complaints_.warning_once(Once::no_offset_table, block_.column('H'),
                             fmt::format("no tool length offset known for H{}; taken as 0", slot),
                             "Nothing to do if every tool is zeroed at its tip.");
  else
    complaints_.error(block_.column('H'), fmt::format("no tool length offset for H{}", slot),
                      "Add it to the job, or use an H number that is there.");
  return 0.0;
}

void Interpreter::set_length_offset() {
  constexpr int kHighestSlot = 9999;
  if (!orders_.has(Group::length_offset))
    return;
  double offset_mm = 0.0;
  if (orders_.code(Group::length_offset) == 430) {
    if (!block_.has('H'))
      return complaints_.error(orders_.column(Group::length_offset), "G43 without H",
                               "Name the offset: G43 H1.");
    const int slot = whole_word('H', 0, kHighestSlot);
    offset_mm = slot < 0 ? 0.0 : table_length_mm(slot);
  }
  // The axes stand still, so another length moves the tip; before the first move its place is home by
  // definition.
  const double change_mm = offset_mm - frames_.length_offset_mm();
  frames_.set_length_offset(offset_mm);
  if (is_placed())
    writer_.place_tip(writer_.tip() - Vec3(0.0, 0.0, change_mm));
}

void Interpreter::set_coordinate_system() {
  if (!orders_.has(Group::coordinate_system))
    return;
  const Code code = orders_.code(Group::coordinate_system);
  frames_.use_system(code <= 590 ? (code - 540) / 10 + 1 : code - 590 + 6);
}

void Interpreter::run_non_modal() {
  switch (orders_.code(Group::non_modal)) {
  case 100:
    return set_origins();
  case 280:
    return go_home(ParameterTable::kHomeOfG28, options_.home_mm);
  case 300:
    return go_home(ParameterTable::kHomeOfG30, options_.home_mm);
  case 920:
    return shift_coordinates();
  case 921:
    return frames_.end_shift(true);
  case 922:
    return frames_.end_shift(false);
  case 923:
    return frames_.restore_shift();
  default:
    return;
  }
}

void Interpreter::set_origins() {
  const int column = orders_.column(Group::non_modal);
  if (!block_.has('L') || block_.value('L') != 2.0)
    return complaints_.error(block_.has('L') ? block_.column('L') : column, "G10 is followed only with L2",
                             "Write G10 L2 P1 X.. Y.. Z.. for an origin; set other offsets in the job.");
  if (!block_.has('P'))
    return complaints_.error(column, "G10 L2 without P", "Name the system: P1 is G54, P9 is G59.3.");
  const int system = whole_word('P', 1, 9);
  if (system < 0)
    return;
  for (int axis = 0; axis < 3; ++axis) {
    const char letter = "XYZ"[axis];
    if (block_.has(letter))
      frames_.set_origin(system, axis, mm(block_.value(letter)));
  }
}

void Interpreter::shift_coordinates() {
  const int column = orders_.column(Group::non_modal);
  if (!block_.has_axis_words())
    return complaints_.error(column, "G92 without X, Y or Z", "Say what the present place is to be called.");
  if (!is_placed())
    return shift_before_first_move();
  for (int axis = 0; axis < 3; ++axis) {
    const char letter = "XYZ"[axis];
    if (block_.has(letter))
      frames_.shift_axis(axis, writer_.tip()[axis], mm(block_.value(letter)));
  }
}

/// G92 at the head of a program means: the operator has put the tip there by hand.
void Interpreter::shift_before_first_move() {
  begin_motion();
  Vec3 tip = writer_.tip();
  for (int axis = 0; axis < 3; ++axis) {
    const char letter = "XYZ"[axis];
    if (block_.has(letter))
      tip[axis] = mm(block_.value(letter)) + frames_.shift()[axis];
  }
  writer_.place_tip(tip);
  start_is_named_ = true;
  complaints_.warning_once(Once::shift_before_first_move, orders_.column(Group::non_modal),
                           "G92 before the first move is taken as where the cutter stands at the start",
                           "Use G54 and touch off to the part's zero; then no G92 is needed.");
}

void Interpreter::warn_home_through_zero() {
  const bool goes_to_zero = block_.has('Z') && block_.value('Z') == 0.0;
  if (state_.is_absolute && goes_to_zero)
    complaints_.warning_once(Once::home_through_zero, block_.column('Z'),
                             "Z0 with G28 or G30 in G90 first goes down to Z0 of the part",
                             "Write G91 G28 Z0, then G90.");
}

/// By way of the programmed point to the home position. The standard sends all axes home; as controllers have
/// it, only the axes named go (all when none is), unless reading is strict.
void Interpreter::go_home(int parameter, Vec3 home) {
  begin_motion();
  const Vec3 stored = frames_.read_position(parameter);
  if (stored != Vec3(0.0))
    home = frames_.tip_from_machine(stored);
  const int column = orders_.column(Group::non_modal);
  if (block_.has_axis_words()) {
    warn_home_through_zero();
    writer_.rapid(target(), column);
  }
  const bool all_go = complaints_.strict() || !block_.has_axis_words();
  Vec3 end = writer_.tip();
  for (int axis = 0; axis < 3; ++axis) {
    if (all_go || block_.has("XYZ"[axis]))
      end[axis] = home[axis];
  }
  writer_.rapid(end, column);
}

} // namespace asperity::gcode
