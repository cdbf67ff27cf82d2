// Where along a curve a point of the plan lies, and when the cutter was there.
#pragma once

#include "asperity/motion/timed_path.h"

namespace asperity {

/// Share 0..1 of the curve's length at its nearest point to p in plan. Arcs of at most a turn.
double nearest_share(const Curve &curve, Vec2 p);

/// Begin and end of a portion as shares of the whole curve it was cut from.
struct Stretch {
  double from = 0, to = 1;
  double at(double u) const { return from + u * (to - from); }
};
Stretch stretch_of(const Curve &portion, const Curve &whole);

/// How the cutter moved at one moment.
struct Moment {
  double turns = 0;     ///< of the spindle since the program began
  double rev_per_s = 0; ///< 0 = not turning
  double plan_speed_mm_per_s = 0;
};
/// How much of the motion goes on in plan: 0 for a plunge, 1 on the level. Steady on lines and plan arcs.
double level_share(const Curve &curve, double u);
/// At a share of the piece's length, where so much of the motion is level.
Moment moment_at(const PathPiece &piece, double share, double level);
Moment moment_at(const PathPiece &piece, double share);

} // namespace asperity
