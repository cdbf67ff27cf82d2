// Look-ahead over the whole program: corner limits, then back from every stop, then forward.
#include "asperity/motion/timed_path.h"

#include "axis_limits.h"
#include "layout.h"
#include "speed_profile.h"

#include "asperity/base/units.h"
#include "asperity/motion/corner.h"

#include <algorithm>

namespace asperity {

namespace {

/// Acceleration of the piece, and the speed it may have in its middle, kept in v_peak until the passes are
/// done.
void set_own_limits(PathPiece &piece, const Machine &machine) {
  if (piece.kind == MoveKind::dwell)
    return;
  const double a =
      axis_acceleration_limit_mm_per_s2(piece.curve, piece.length_mm, machine.acceleration_mm_per_s2);
  const Vec3 axis_speed = machine.max_feed_mm_per_min * mm_per_s_from_mm_per_min(1.0);
  piece.acceleration_mm_per_s2 = a;
  piece.v_peak_mm_per_s =
      std::min({piece.feed_mm_per_s, axis_speed_limit_mm_per_s(piece.curve, piece.length_mm, axis_speed),
                centripetal_limit_mm_per_s(piece.curve, piece.length_mm, a)});
}

/// Speed at which the path may pass from one piece to the next.
double joint_limit_mm_per_s(const PathPiece &first, const PathPiece &second, const Program &program,
                            double deviation_mm) {
  if (must_stop_between(first, second, program))
    return 0.0;
  const double nominal = std::min(first.v_peak_mm_per_s, second.v_peak_mm_per_s);
  if (is_rounding(first, program) || is_rounding(second, program))
    return nominal;
  const double turn = turn_between_rad(first.curve.velocity(1.0), second.curve.velocity(0.0));
  const double a = std::min(first.acceleration_mm_per_s2, second.acceleration_mm_per_s2);
  const double shorter_leg = std::min(first.length_mm, second.length_mm);
  return std::min(nominal, short_leg_corner_speed_mm_per_s(a, deviation_mm, turn, shorter_leg));
}

void set_limits(LargeArray<PathPiece> &pieces, const Program &program, const Machine &machine) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    set_own_limits(pieces[i], machine);
    pieces[i].v_in_mm_per_s =
        i == 0 ? 0.0 : joint_limit_mm_per_s(pieces[i - 1], pieces[i], program, machine.corner_deviation_mm);
  }
}

/// Lowers each begin speed so that the piece can still slow down to the begin speed of the next; the last one
/// stops.
void look_back(LargeArray<PathPiece> &pieces) {
  double next = 0.0;
  for (std::size_t i = pieces.size(); i-- > 0;) {
    PathPiece &piece = pieces[i];
    const double reachable = speed_after_mm_per_s(next, piece.acceleration_mm_per_s2, piece.length_mm);
    piece.v_in_mm_per_s = std::min(piece.v_in_mm_per_s, reachable);
    next = piece.v_in_mm_per_s;
  }
}

/// Lowers each end speed to what the piece can reach from its begin, and settles the peak between the two.
void run_forward(LargeArray<PathPiece> &pieces) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    PathPiece &piece = pieces[i];
    const double a = piece.acceleration_mm_per_s2, in = piece.v_in_mm_per_s;
    const double wanted = i + 1 < pieces.size() ? pieces[i + 1].v_in_mm_per_s : 0.0;
    const double out = std::min(wanted, speed_after_mm_per_s(in, a, piece.length_mm));
    piece.v_out_mm_per_s = out;
    if (i + 1 < pieces.size())
      pieces[i + 1].v_in_mm_per_s = out;
    const double peak = std::min(piece.v_peak_mm_per_s, triangle_peak_mm_per_s(a, piece.length_mm, in, out));
    piece.v_peak_mm_per_s = std::max({peak, in, out}); // the two can only pass the peak by rounding
  }
}

void set_programmed_speed(LargeArray<PathPiece> &pieces) {
  for (PathPiece &piece : pieces)
    piece.v_in_mm_per_s = piece.v_peak_mm_per_s = piece.v_out_mm_per_s = piece.feed_mm_per_s;
}

void set_times(TimedPath &path) {
  for (PathPiece &piece : path.pieces) {
    piece.start_s = path.duration_s;
    if (piece.kind != MoveKind::dwell)
      piece.duration_s = profile_duration_s(piece);
    path.duration_s += piece.duration_s;
    if (piece.kind != MoveKind::rapid)
      path.cutting_s += piece.duration_s;
  }
}

} // namespace

TimedPath plan_motion(const Program &program, const Machine &machine, const Setup &setup,
                      const Effects &effects) {
  TimedPath path;
  path.pieces = lay_out(program, machine, setup, effects);
  set_limits(path.pieces, program, machine);
  if (effects.acceleration) {
    look_back(path.pieces);
    run_forward(path.pieces);
  } else {
    set_programmed_speed(path.pieces);
  }
  set_times(path);
  return path;
}

} // namespace asperity
