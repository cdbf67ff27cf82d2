// How strokes move, and how each goes on from the one before it.
#pragma once

#include "sweep_wall_stroke.h"

#include <vector>

namespace asperity {

/// Contact directions nearer than this are joined by one window.
inline constexpr double kSmoothTurn_rad = 0.3;
inline constexpr double kSamePlace_mm = 1e-9; ///< a joint closer than this is closed

/// How a stroke is seen from its neighbours.
struct Manner {
  bool is_moving = false;       ///< in plan, and so that bending cannot turn it much
  bool is_plain = false;        ///< moving, and of steady radius
  double drift_rad = 0;         ///< how far changing offsets may turn the motion
  double turn_rad = 0;          ///< at its begin, against the stroke before
  bool begins_smoothly = false; ///< its begin is where the stroke before ended, and turns little there
};

std::vector<Manner> manners_of(const StrokeList &strokes, const std::vector<WallCutter> &cutters,
                               int threads);

} // namespace asperity
