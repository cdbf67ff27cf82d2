// The path with its speed: what the machine really does with the program under its acceleration limits.
#pragma once

#include "asperity/gcode/program.h"
#include "asperity/job/job.h"

#include <cstdint>

namespace asperity {

/// Part of the path with one geometry and one speed profile. Part frame, mm (program zero and zero errors
/// applied). Speed profile: from v_in at steady acceleration to v_peak, cruise, then down to v_out [mm/s
/// along the curve].
struct PathPiece {
  Curve curve;
  double length_mm = 0;
  double v_in_mm_per_s = 0, v_peak_mm_per_s = 0, v_out_mm_per_s = 0;
  double acceleration_mm_per_s2 = 0;
  double start_s = 0;       ///< time at which the piece begins
  double duration_s = 0;    ///< with dwell: the dwell
  double feed_mm_per_s = 0; ///< programmed
  double spindle_rpm = 0;
  std::uint32_t line = 0;
  std::uint32_t move = 0; ///< index into Program::moves
  std::uint16_t tool = 0;
  MoveKind kind = MoveKind::rapid;
  SpindleTurn turn = SpindleTurn::off;

  /// Speed at distance d from the piece's begin [mm/s].
  double speed_at(double distance_mm) const;
  /// Time since the piece began at distance d [s].
  double time_at(double distance_mm) const;
};

struct TimedPath {
  LargeArray<PathPiece> pieces;
  double duration_s = 0;
  double cutting_s = 0; ///< of it, in feed moves and dwells
};

/// Look-ahead speed planning: junction rule, per-axis acceleration and feed limits, exact stops, dwells, arcs
/// limited by centripetal acceleration, G64 P corners rounded to arcs. effects.acceleration off: programmed
/// feed everywhere. The path stands still at both ends, at dwells, exact stops and changes of tool or
/// spindle. Along an arc the centripetal and the tangential limit hold each by itself, not as a vector sum. A
/// rounding arc carries the index, line and feed of the move it leads into. Moves of no length leave no
/// piece; time for changing tools is not counted.
TimedPath plan_motion(const Program &program, const Machine &machine, const Setup &setup,
                      const Effects &effects);

} // namespace asperity
