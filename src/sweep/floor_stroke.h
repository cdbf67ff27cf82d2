// The swept path in simple strokes: lines and short plan arcs of a tip, each rising evenly or level.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/sweep/swept_path.h"

#include <limits>
#include <vector>

namespace asperity {

/// One stroke of the tip, named from its low end to its high end whichever way it was travelled. A stamp
/// (standing or plunging cutter) is a line without length. Arcs turn by at most an eighth of a circle.
/// What sweeping a line needs most comes first and shares cache lines.
struct alignas(64) FloorStroke {
  Vec2 low{0.0};          ///< end in plan
  Vec2 low_along{1, 0};   ///< unit tangent there, towards the high end
  double length_mm = 0.0; ///< in plan
  double z_mm = 0.0;      ///< tip height at the low end
  double slope = 0.0;     ///< rise per mm in plan, >= 0
  double stretch = 1.0;   ///< sqrt(1 + slope^2)
  /// Cells farther than this before the low end's (beyond the high end's) normal plane belong to a neighbour
  /// [mm].
  double clip_low_mm = std::numeric_limits<double>::infinity();
  double clip_high_mm = std::numeric_limits<double>::infinity();
  std::uint32_t owner = 0;
  /// Members of a merged run in FloorPath::runs; none: the stroke has one owner.
  std::uint32_t run_first = 0, run_count = 0;
  std::uint16_t cutter = 0;
  bool is_arc = false;
  bool descends = false; ///< travelled from high to low
  bool joins_previous = false;
  Vec2 high{0.0}, high_along{1, 0};
  Vec2 centre{0.0};
  double radius_mm = 0.0;
  double sweep_rad = 0.0; ///< > 0
  /// Cells belong to a neighbour too if even with contacts lagging by this share of the ball's half chord
  /// they would touch beyond the low end.
  double low_lag = 0.0;
  double slack_mm = 0.0; ///< what bounds may be wrong by: of a hull, see FloorHulls
  double turn = 1.0;     ///< +1 counter-clockwise from low to high, -1 clockwise

  double distance_mm(Vec2 p) const;
  /// Plan box of all cells the stroke may lower, cutter radius included.
  void box(double reach_mm, Vec2 &low_corner, Vec2 &high_corner) const;
};

/// A tip on its way from one point to another; without a direction where these are the same in plan.
FloorStroke line_stroke(Vec3 begin, Vec3 end);

struct FloorRuns;
struct MergeRule;
/// Strokes of the pieces from `begin` to `end`, what runs on merged. Lines, level arcs and helices are exact
/// but for that; an arc whose offset changes is within 0.5 nm, one in an upright plane within 10 nm of its
/// path.
std::vector<FloorStroke> floor_strokes(const SweptPath &path, std::size_t begin, std::size_t end,
                                       const MergeRule &rule, FloorRuns &runs);

struct Flank;
/// Leaves to each of two joined strokes the cells it can be lowest over.
void clip_at_joint(FloorStroke &before, FloorStroke &after, const Flank &flank);

} // namespace asperity
