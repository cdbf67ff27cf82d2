// Which strokes can touch which outline elements at all: worked out once for all rows.
#pragma once

#include "sweep_wall_stroke.h"
#include "sweep_wall_window.h"

#include <vector>

namespace asperity {

/// How a stroke may meet an element. Every listed element is near enough for the disc to reach.
struct Meeting {
  std::uint32_t element = 0;
  bool faces_left = false, faces_right = false; ///< contacts on that side of the motion can lie on its rays
  bool may_cross = false; ///< the cutter may be beyond the wall, so that far sides matter
  bool faces(WallSide side) const { return side == WallSide::left ? faces_left : faces_right; }
};

struct Reach {
  std::uint32_t first = 0, count = 0; ///< range of WallPlan::meetings
  bool faces_left = false, faces_right = false;
  bool begins_quietly = false; ///< the joint with the stroke before is level and nearly tangent
  bool ends_quietly = false;
  bool faces(WallSide side) const { return side == WallSide::left ? faces_left : faces_right; }
};

/// All that a chart's rows share.
struct WallPlan {
  std::vector<WallCutter> cutters;
  std::vector<Stroke> strokes;
  std::vector<WallElement> elements;
  std::vector<Reach> reaches; ///< of each stroke
  std::vector<Meeting> meetings;
  double e_most_mm = 0; ///< entries above this need not be found
};

inline constexpr double kSmoothTurn_rad =
    0.3; ///< contact directions nearer than this are joined by one window

WallPlan plan_wall(const WallChart &chart, const SweptPath &path);

} // namespace asperity
