// Passes planned in the job instead of a program brought along. Part frame; mm, mm/min, rpm, degrees.
#pragma once

#include "asperity/job/feature.h"
#include "asperity/shape/outline.h"

#include <optional>
#include <string>

namespace asperity {

enum class PassKind { wall, outline, floor, dome };
enum class CutDirection { climb, conventional, both };
/// equal: all levels alike, none above the stepdown. rest: full stepdowns, the last level takes what is left.
enum class LastLevel { equal, rest };
enum class EntryKind { plunge, ramp, zigzag, helix, arc };
enum class Pattern { levels, parallel, outline_parallel, spiral };
enum class RingOrder { inwards, outwards };
/// open: the cutter may run past the floor's outline. wall: it must stay inside.
enum class FloorEdge { open, wall };

/// How a level is entered.
struct LevelEntry {
  EntryKind kind = EntryKind::plunge;
  double ramp_deg = 0;               ///< ramp, and zigzag on a stretch
  double zigzag_mm = 0;              ///< length of the stretch; 0 = whole laps, one stepdown each
  double lead_radius_mm = 0;         ///< arc
  double lead_deg = 90;              ///< arc: how much of the circle
  std::optional<double> approach_mm; ///< how far beside the path the cutter comes down and goes up
};

/// Where round the outline a level begins.
struct StartPlace {
  double deg = 0;                 ///< seen from the outline's centre, from +x counter-clockwise
  std::optional<double> along_mm; ///< instead: arc length on the wall's outline
  std::optional<double> step_deg; ///< on from level to level; nothing = where the level before ended
};

/// Runs at the final size after the levels that left an allowance.
struct FinishPass {
  double feed_mm_per_min = 0;
  double stepdown_mm = 0; ///< 0 = the full height at once
};

struct PlannedPass {
  std::string name;
  PassKind kind = PassKind::wall;
  std::size_t feature = 0;  ///< in Job::features; not for PassKind::outline
  int line = 0, column = 0; ///< where it stands in the job file

  int cutter = 1;
  double rpm = 0, feed_mm_per_min = 0, plunge_feed_mm_per_min = 0, ramp_feed_mm_per_min = 0;
  CutDirection direction = CutDirection::climb;
  double chord_mm = 0; ///< arcs are written as chords at most this long; 0 = as arcs

  // What is followed, for walls and outlines: the wall's own outline, or one drawn in the pass.
  Outline outline;
  Vec2 centre{0.0};
  Side side = Side::outside;

  double z_top_mm = 0, z_bottom_mm = 0; ///< levels begin below z_top and end at z_bottom, overcut included
  double stepdown_mm = 0;               ///< 0 = all at once
  LastLevel last_level = LastLevel::equal;
  double allowance_mm = 0; ///< walls: beside the wall. floors: above the floor

  // Walls and outlines.
  std::optional<FinishPass> finish;
  int spring_laps = 0; ///< more laps on every level of the finish pass, or of all levels where there is none
  double overlap_mm = 0;
  StartPlace start;
  LevelEntry entry;

  // Floors and domes.
  Pattern pattern = Pattern::parallel;
  double stepover_mm = 0;
  double angle_deg = 0; ///< parallel: direction of the lines, from +x
  RingOrder order = RingOrder::inwards;
  FloorEdge edge = FloorEdge::open;
  double past_edge_mm = 0;         ///< open: the cutter's centre beyond the outline
  double island_gap_mm = 0;        ///< between cutter and islands; negative = over their edge
  double chord_error_mm = 0.001;   ///< domes: how far straight moves may leave the curved path
  std::optional<double> lowest_mm; ///< domes: the tip goes no deeper
};

/// What holds for all passes together.
struct BetweenPasses {
  std::optional<double> safe_mm; ///< height of rapids; nothing = above blank and keep-outs
  std::optional<double> near_mm; ///< rapids go down to here; nothing = just above the blank
  std::optional<Vec2> park_mm;   ///< where the cutter goes at the end
  double spindle_start_s = 2.0;
  int decimals = 6;
};

} // namespace asperity
