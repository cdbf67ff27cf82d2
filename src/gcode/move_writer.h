// Turns steps of the interpreter into moves of the program, with the feed and spindle in force.
#pragma once

#include "arc.h"
#include "complaints.h"
#include "modal_state.h"

namespace asperity::gcode {

/// Keeps the tip's place in the output frame. Steps that go nowhere make no move.
class MoveWriter {
public:
  /// The program starts with the tip at `start`.
  MoveWriter(Program &program, const ModalState &state, Complaints &complaints, Vec3 start)
      : program_(program), state_(state), complaints_(complaints), tip_(start) {}

  Vec3 tip() const { return tip_; }
  /// Sets the tip elsewhere without a move: another tool length, or a start named by the program.
  void place_tip(Vec3 tip) { tip_ = tip; }
  bool has_moves() const { return !program_.moves.empty(); }

  void rapid(Vec3 to, int column);
  void feed(const Curve &curve, int column);
  void feed(Vec3 to, int column) { feed(Curve::line(tip_, to), column); }
  void dwell(double seconds);

  /// Until the next call with false, moves are marked as part of a canned cycle.
  void set_in_cycle(bool in_cycle) { in_cycle_ = in_cycle; }
  /// The spindle's sense for the coming moves, where a cycle differs from what is in force.
  void set_turn(SpindleTurn turn) { turn_ = turn; }
  void use_turn_in_force() { turn_ = state_.turn; }

private:
  Move &append(MoveKind kind, const Curve &curve);
  bool is_in_range(Vec3 to, int column);
  double feed_mm_per_min(double length_mm, int column);
  void check_spindle(int column);
  void check_before_first_move(int column);

  Program &program_;
  const ModalState &state_;
  Complaints &complaints_;
  Vec3 tip_;
  SpindleTurn turn_ = SpindleTurn::off;
  bool in_cycle_ = false;
};

} // namespace asperity::gcode
