// What the reader has to say about the line at hand, as errors, warnings, or departures from the standard.
#pragma once

#include "asperity/base/problem.h"

#include <bitset>
#include <string>
#include <string_view>

namespace asperity::gcode {

/// A fault found while a line is read; column from 1.
struct Fault {
  int column = 0;
  std::string message;
  std::string remedy;
};

/// Warnings that are worth one line in the whole program, not one a move.
enum class Once : std::uint8_t {
  units_not_said,
  spindle_off,
  loose_arc,
  full_circle_by_silence,
  feed_unknown,
  feed_per_turn_unknown,
  machine_zero_unknown,
  home_through_zero,
  dwell_long,
  tool_never_changed,
  shift_before_first_move,
  no_offset_table,
  mode_word_alone,
  double_slash,
  stray_percent,
  long_number,
  count
};

class Complaints {
public:
  /// strict: departures from NISTIR 6556 that real files make count as errors.
  Complaints(Problems &problems, std::string file, bool strict)
      : problems_(problems), file_(std::move(file)), strict_(strict) {}

  void begin_line(int line) {
    line_ = line;
    line_failed_ = false;
  }
  int line() const { return line_; }
  bool line_failed() const { return line_failed_; }
  bool strict() const { return strict_; }

  void error(int column, std::string message, std::string remedy);
  void error(Fault fault) { error(fault.column, std::move(fault.message), std::move(fault.remedy)); }
  void warning(int column, std::string message, std::string remedy);
  /// Against NISTIR 6556 but met in real files: a warning, in strict reading an error.
  void departure(int column, std::string message, std::string remedy);

  bool said(Once what) const { return said_[static_cast<std::size_t>(what)]; }
  void warning_once(Once what, int column, std::string message, std::string remedy);
  void departure_once(Once what, int column, std::string message, std::string remedy);
  void error_once(Once what, int column, std::string message, std::string remedy);
  /// Lets the warning be given again.
  void forget(Once what) { said_[static_cast<std::size_t>(what)] = false; }

private:
  bool first_time(Once what);

  Problems &problems_;
  std::string file_;
  bool strict_ = false;
  int line_ = 0;
  bool line_failed_ = false;
  std::bitset<static_cast<std::size_t>(Once::count)> said_;
};

} // namespace asperity::gcode
