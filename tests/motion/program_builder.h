// Writes small programs move by move for the tests of the motion room.
#pragma once

#include "asperity/motion/timed_path.h"

#include <cmath>

namespace asperity {

class ProgramBuilder {
public:
  explicit ProgramBuilder(Vec3 start = Vec3(0.0)) : at_(start) {}

  ProgramBuilder &feed_to(Vec3 end, double feed_mm_per_min) {
    return add(line(end, MoveKind::feed, feed_mm_per_min));
  }
  ProgramBuilder &rapid_to(Vec3 end) { return add(line(end, MoveKind::rapid, 0.0)); }
  /// Plan arc round `centre`, sweep > 0 counter-clockwise, rising by `rise_mm` on the way.
  ProgramBuilder &arc(Vec2 centre, double sweep_rad, double feed_mm_per_min, double rise_mm = 0.0) {
    const Vec2 from = plan(at_) - centre;
    const double c = std::cos(sweep_rad), s = std::sin(sweep_rad);
    const Vec3 end(centre.x + c * from.x - s * from.y, centre.y + s * from.x + c * from.y, at_.z + rise_mm);
    Move move = line(end, MoveKind::feed, feed_mm_per_min);
    move.curve = Curve::plan_arc(at_, end, centre, sweep_rad);
    return add(move);
  }
  ProgramBuilder &dwell(double seconds) {
    Move move = line(at_, MoveKind::dwell, 0.0);
    move.dwell_s = seconds;
    return add(move);
  }

  ProgramBuilder &exact_stop() { return control(PathControl::exact_stop, -1.0); }
  ProgramBuilder &exact_path() { return control(PathControl::exact_path, -1.0); }
  /// Negative: G64 without P.
  ProgramBuilder &blend(double tolerance_mm) { return control(PathControl::blend, tolerance_mm); }
  ProgramBuilder &tool(std::uint16_t number) {
    tool_ = number;
    return *this;
  }
  ProgramBuilder &spindle(double rpm, SpindleTurn turn = SpindleTurn::clockwise) {
    rpm_ = rpm;
    turn_ = turn;
    return *this;
  }

  const Program &program() const { return program_; }

private:
  Move line(Vec3 end, MoveKind kind, double feed_mm_per_min) const {
    Move move;
    move.curve = Curve::line(at_, end);
    move.kind = kind;
    move.feed_mm_per_min = feed_mm_per_min;
    return move;
  }
  ProgramBuilder &add(Move move) {
    move.line = static_cast<std::uint32_t>(program_.moves.size() + 1);
    move.control = control_;
    move.blend_tolerance_mm = tolerance_mm_;
    move.tool = tool_;
    move.spindle_rpm = rpm_;
    move.turn = turn_;
    at_ = move.curve.end;
    program_.moves.push_back(move);
    return *this;
  }
  ProgramBuilder &control(PathControl control, double tolerance_mm) {
    control_ = control;
    tolerance_mm_ = tolerance_mm;
    return *this;
  }

  Program program_;
  Vec3 at_;
  PathControl control_ = PathControl::exact_path;
  double tolerance_mm_ = -1.0;
  std::uint16_t tool_ = 1;
  double rpm_ = 18000.0;
  SpindleTurn turn_ = SpindleTurn::clockwise;
};

/// The same acceleration and a generous feed limit on every axis, so that closed forms are easy to write
/// down.
inline Machine even_machine(double acceleration_mm_per_s2, double corner_deviation_mm = 0.02) {
  Machine machine;
  machine.acceleration_mm_per_s2 = Vec3(acceleration_mm_per_s2);
  machine.max_feed_mm_per_min = Vec3(60000.0);
  machine.rapid_mm_per_min = 6000.0;
  machine.corner_deviation_mm = corner_deviation_mm;
  return machine;
}

/// Program zero at the part's zero.
inline TimedPath plan(const Program &program, const Machine &machine, const Effects &effects = {}) {
  return plan_motion(program, machine, Setup{}, effects);
}

inline TimedPath plan(const ProgramBuilder &builder, const Machine &machine, const Effects &effects = {}) {
  return plan(builder.program(), machine, effects);
}

} // namespace asperity
