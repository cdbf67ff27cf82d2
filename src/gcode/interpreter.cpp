// Carries out the lines of a program in the standard's order, from words to moves.
#include "interpreter.h"

#include "scanner.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

constexpr double kWholeWithin = 1e-4; // NISTIR 6556, 3.3.2.1
constexpr int kHighestTool = 65535;

} // namespace

Interpreter::Interpreter(Program &program, const ReadOptions &options, Complaints &complaints)
    : program_(program), options_(options), complaints_(complaints),
      writer_(program, state_, complaints, options.home_mm) {
  state_.is_inch = options.start_in_inch;
  frames_.set_inch(state_.is_inch);
}

void Interpreter::run_line(std::string_view text) {
  const bool is_readable = read_block(text, parameters_, block_, fault_, complaints_);
  if (block_.is_deletable && options_.block_delete)
    return;
  if (!is_readable) {
    complaints_.error(std::move(fault_));
    is_tip_doubtful_ = true;
    return;
  }
  if (sort_orders(block_, state_.motion, orders_, complaints_)) {
    check_word_use(block_, orders_, complaints_);
    carry_out();
  } else {
    is_tip_doubtful_ = true;
  }
  for (const ParameterSetting &setting : block_.settings)
    parameters_.set(setting.index, setting.value);
}

void Interpreter::carry_out() {
  take_comment();
  set_feed_mode();
  set_feed();
  set_spindle_speed();
  select_tool();
  change_tool();
  turn_spindle();
  writer_.use_turn_in_force();
  dwell();
  set_plane();
  set_units();
  set_length_offset();
  set_coordinate_system();
  set_path_control();
  set_distance_mode();
  set_cycle_return();
  run_non_modal();
  run_motion();
  stop();
}

void Interpreter::take_comment() {
  const std::string_view text = block_.comment;
  Scanner scanner(text);
  if (text.empty() || !scanner.take("msg") || !scanner.take(','))
    return;
  program_.messages.emplace_back(scanner.rest());
}

void Interpreter::set_feed_mode() {
  if (!orders_.has(Group::feed_mode))
    return;
  const Code code = orders_.code(Group::feed_mode);
  const FeedMode mode = code == 930   ? FeedMode::inverse_time
                        : code == 950 ? FeedMode::per_turn
                                      : FeedMode::per_minute;
  // A number given as mm/min means nothing as turns or minutes.
  if (mode != state_.feed_mode)
    state_.feed = 0.0;
  state_.feed_mode = mode;
}

void Interpreter::set_feed() {
  if (!block_.has('F'))
    return;
  const double value = block_.value('F');
  const int column = block_.column('F');
  if (value < 0.0)
    return complaints_.error(column, fmt::format("negative feed {:g}", value),
                             "Write F without a minus sign.");
  state_.feed = state_.feed_mode == FeedMode::inverse_time ? value : mm(value);
  const bool will_be_inch = orders_.code(Group::units) == 200;
  if (orders_.has(Group::units) && will_be_inch != state_.is_inch &&
      state_.feed_mode != FeedMode::inverse_time)
    complaints_.warning(column,
                        fmt::format("F is read in {}: it comes before {} in the order of execution",
                                    state_.is_inch ? "inches" : "millimetres", will_be_inch ? "G20" : "G21"),
                        "Put G20 or G21 on a line before the F word.");
}

void Interpreter::set_spindle_speed() {
  if (!block_.has('S'))
    return;
  if (block_.value('S') < 0.0)
    return complaints_.error(block_.column('S'),
                             fmt::format("negative spindle speed {:g}", block_.value('S')),
                             "Write S without a minus sign; M4 turns backwards.");
  state_.spindle_rpm = block_.value('S');
}

void Interpreter::select_tool() {
  if (!block_.has('T'))
    return;
  const int tool = whole_word('T', 0, kHighestTool);
  if (tool >= 0)
    state_.selected_tool = tool;
}

void Interpreter::change_tool() {
  if (!orders_.has(Group::tool_change))
    return;
  const int column = orders_.column(Group::tool_change);
  state_.tool_was_changed = true;
  state_.turn = SpindleTurn::off; // the change stops it [NISTIR 6556, 3.6.3]
  const std::vector<int> &tools = options_.tools;
  if (state_.selected_tool == 0 && state_.tool == 0)
    complaints_.warning(column, "M6 before any T word", "Name the tool: T1 M6.");
  else if (!tools.empty() && std::find(tools.begin(), tools.end(), state_.selected_tool) == tools.end())
    complaints_.error(column, fmt::format("tool {} is not among the job's tools", state_.selected_tool),
                      fmt::format("Add it to the job, or use one of: {}.", fmt::join(tools, ", ")));
  state_.tool = state_.selected_tool;
}

void Interpreter::turn_spindle() {
  switch (orders_.code(Group::spindle)) {
  case 30:
    state_.turn = SpindleTurn::clockwise;
    break;
  case 40:
    state_.turn = SpindleTurn::counter_clockwise;
    break;
  case 50:
    state_.turn = SpindleTurn::off;
    break;
  default:
    break;
  }
}

void Interpreter::dwell() {
  constexpr double kDoubtful_s = 100.0;
  if (orders_.code(Group::non_modal) != 40)
    return;
  const int column = orders_.column(Group::non_modal);
  if (!block_.has('P'))
    return complaints_.error(column, "G4 without P", "Give the wait in seconds: G4 P0.5.");
  const double seconds = block_.value('P');
  if (seconds < 0.0)
    return complaints_.error(block_.column('P'), "negative wait", "Write P without a minus sign.");
  if (seconds >= kDoubtful_s)
    complaints_.warning_once(Once::dwell_long, block_.column('P'),
                             fmt::format("a wait of {:g} seconds", seconds),
                             "P is in seconds here; divide by 1000 if the post writes milliseconds.");
  begin_motion();
  writer_.dwell(seconds);
}

void Interpreter::set_plane() {
  switch (orders_.code(Group::plane)) {
  case 170:
    state_.plane = Plane::xy;
    break;
  case 180:
    state_.plane = Plane::xz;
    break;
  case 190:
    state_.plane = Plane::yz;
    break;
  default:
    break;
  }
}

void Interpreter::set_units() {
  if (!orders_.has(Group::units))
    return;
  state_.is_inch = orders_.code(Group::units) == 200;
  state_.units_said = true;
  frames_.set_inch(state_.is_inch);
}

void Interpreter::set_path_control() {
  if (!orders_.has(Group::path_control))
    return;
  const Code code = orders_.code(Group::path_control);
  state_.control = code == 640   ? PathControl::blend
                   : code == 611 ? PathControl::exact_stop
                                 : PathControl::exact_path;
  state_.blend_tolerance_mm = -1.0;
  if (code != 640 || !block_.has('P'))
    return;
  if (block_.value('P') < 0.0)
    return complaints_.error(block_.column('P'), "negative path tolerance", "Write P without a minus sign.");
  state_.blend_tolerance_mm = mm(block_.value('P'));
}

void Interpreter::set_distance_mode() {
  if (orders_.has(Group::distance))
    state_.is_absolute = orders_.code(Group::distance) == 900;
  if (orders_.has(Group::arc_centres))
    state_.has_absolute_centres = orders_.code(Group::arc_centres) == 901;
}

void Interpreter::set_cycle_return() {
  if (orders_.has(Group::cycle_return))
    state_.returns_to_retract_height = orders_.code(Group::cycle_return) == 990;
}

void Interpreter::stop() {
  const Code code = orders_.code(Group::stopping);
  has_ended_ = code == 20 || code == 300;
}

int Interpreter::motion_column() const {
  if (orders_.has(Group::motion))
    return orders_.column(Group::motion);
  const int axis = block_.first_axis_column();
  return axis > 0 ? axis : 1;
}

int Interpreter::whole_word(char letter, int least, int most) {
  const double value = block_.value(letter);
  const double whole = std::round(value);
  if (std::abs(value - whole) <= kWholeWithin && whole >= least && whole <= most)
    return static_cast<int>(whole);
  complaints_.error(block_.column(letter),
                    fmt::format("{}{:g} is not a whole number from {} to {}", letter, value, least, most),
                    fmt::format("Write {} with a whole number in that range.", letter));
  return -1;
}

} // namespace asperity::gcode
