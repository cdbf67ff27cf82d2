// Carries out the lines of a program in the standard's order, from words to moves.
#pragma once

#include "block.h"
#include "canned_cycle.h"
#include "complaints.h"
#include "frames.h"
#include "modal_state.h"
#include "move_writer.h"
#include "orders.h"
#include "parameters.h"

#include <string_view>
#include <vector>

namespace asperity::gcode {

class Interpreter {
public:
  Interpreter(Program &program, const ReadOptions &options, Complaints &complaints);

  /// Reads and carries out one line, without its end-of-line characters.
  void run_line(std::string_view text);
  /// M2 or M30 has been met: lines after it are not read.
  bool has_ended() const { return has_ended_; }
  bool has_moves() const { return writer_.has_moves(); }

private:
  // One line, in the order of NISTIR 6556, table 8.
  void carry_out();
  void take_comment();
  void set_feed_mode();
  void set_feed();
  void set_spindle_speed();
  void select_tool();
  void change_tool();
  void turn_spindle();
  void dwell();
  void set_plane();
  void set_units();
  void set_length_offset();
  void set_coordinate_system();
  void set_path_control();
  void set_distance_mode();
  void set_cycle_return();
  void run_non_modal();
  void run_motion();
  void stop();

  // Offsets and homes.
  double table_length_mm(int slot);
  void set_origins();
  void shift_coordinates();
  void shift_before_first_move();
  void go_home(int parameter, Vec3 home);
  void warn_home_through_zero();

  // Motion.
  bool is_placed() const { return writer_.has_moves() || start_is_named_; }
  void begin_motion();
  Vec3 target() const;
  void move_in_machine_coordinates();
  bool is_feed_ready();
  void run_straight();
  void note_doubt_cleared();

  // Arcs.
  void run_arc();
  bool check_arc_words();
  ArcEnds arc_ends() const;
  void run_radius_arc(const ArcEnds &ends);
  void run_centre_arc(const ArcEnds &ends);
  Vec2 centre_from_words(const ArcEnds &ends, bool is_absolute) const;
  bool accept_mismatch(double mismatch_mm, double radius_mm);
  void refuse_mismatch(const ArcEnds &ends, Vec2 centre);
  double close_mm() const;
  double loose_mm(double radius_mm) const;

  // Cycles.
  void run_cycle();
  bool read_cycle_words();
  bool check_cycle();
  bool check_cycle_spindle();
  int cycle_repeats();
  Hole hole_from_words() const;
  void drill(Hole hole, int repeats);

  int motion_column() const;
  /// A whole number in [least, most], or an error at the word and -1.
  int whole_word(char letter, int least, int most);
  double mm(double length) const { return state_.mm(length); }

  Program &program_;
  const ReadOptions &options_;
  Complaints &complaints_;
  ParameterTable parameters_;
  Frames frames_{parameters_};
  ModalState state_;
  MoveWriter writer_;
  Block block_;
  Orders orders_;
  Fault fault_;
  std::vector<CycleStep> steps_;
  bool has_ended_ = false;
  bool start_is_named_ = false;
  /// A line before this one was skipped, so the tip may stand elsewhere than the program means.
  bool is_tip_doubtful_ = false;
};

} // namespace asperity::gcode
