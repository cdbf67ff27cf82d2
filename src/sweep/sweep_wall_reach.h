// Which strokes can touch which outline elements at all: worked out once for all rows.
#pragma once

#include "path_portion.h"
#include "sweep_wall_manner.h"
#include "sweep_wall_window.h"

#include <span>
#include <vector>

namespace asperity {

/// How a stroke may meet an element. Every listed element is near enough for the disc to reach.
struct Meeting {
  std::uint32_t element = 0;
  bool faces_left = false, faces_right = false; ///< contacts on that side of the motion can lie on its rays
  bool may_cross = false; ///< the cutter may be beyond the wall, so that far sides matter
  bool faces(WallSide side) const { return side == WallSide::left ? faces_left : faces_right; }
};

/// Columns of the chart, end left out, and nearly where along the stroke their contact lies.
struct ColumnSpan {
  std::uint32_t begin = 0, end = 0;
  double u_origin = 0, u_per_mm = 0;
  double u_near(double s_mm) const { return u_origin + u_per_mm * s_mm; }
};

/// What the rows wholly within a stroke's height need of it, on one side of its motion.
enum class Passing : std::uint8_t {
  any,      ///< must be followed row by row
  idle,     ///< shows them no contact, and its neighbours go on from it smoothly
  straight, ///< where it is a cylinder it cuts them along `spans`, and nowhere else
  curved,   ///< the same, but its disc does not run straight
};

struct Reach {
  std::uint32_t first = 0, count = 0; ///< range of WallPlan::meetings
  double low_mm = 0, high_mm = 0;     ///< no row below or above is cut
  bool begins_smoothly = false;       ///< goes on from the stroke before, closed and nearly tangent
  bool ends_smoothly = false;
  std::array<Passing, 2> passing{Passing::any, Passing::any};     ///< by WallSide
  std::array<std::uint32_t, 2> first_span{0, 0}, last_span{0, 0}; ///< by WallSide: range of WallPlan::spans
  double least_mm = 0;                          ///< what it cuts above 0 lies no lower (sweep_wall_hidden.h)
  std::array<bool, 2> goes_first{false, false}; ///< by WallSide: is in WallPlan::first
};

struct FirstStroke {
  std::uint32_t stroke = 0;
  WallSide side = WallSide::left;
};

/// What is found out about some strokes that follow each other; their Reaches count from its beginning.
struct Found {
  std::vector<Meeting> meetings;
  std::vector<ColumnSpan> spans;
};

/// All that a chart's rows share.
struct WallPlan {
  std::vector<WallCutter> cutters;
  StrokeList strokes;
  std::vector<WallElement> elements;
  std::vector<Reach> reaches; ///< of each stroke
  std::vector<Meeting> meetings;
  std::vector<ColumnSpan> spans;
  std::vector<FirstStroke> first; ///< cut before all others where they pass whole rows
  bool others_wait = false;       ///< are there any?
  double e_most_mm = 0;           ///< entries above this need not be found

  std::span<const ColumnSpan> spans_of(std::size_t stroke, WallSide side) const {
    const Reach &reach = reaches[stroke];
    const auto at = static_cast<std::size_t>(side);
    return std::span(spans).subspan(reach.first_span[at], reach.last_span[at] - reach.first_span[at]);
  }
};

/// Of one portion of the path.
WallPlan plan_wall(const WallChart &chart, const SweptPath &path, const PathPortion &portion,
                   const ColumnFinder &columns, int threads);

} // namespace asperity
