// Chords over many short joined strokes: few enough to look for first, near enough to leave most of them out.
#pragma once

#include "floor_flank.h"
#include "floor_merge.h"

#include <span>
#include <vector>

namespace asperity {

/// For every run of short strokes one longer stroke, and every other stroke as it is. A hull's owner is its
/// first stroke; its run_count is 0 if that is its only one. What its members leave departs from what it
/// leaves by no more than its slack_mm.
struct FloorHulls {
  std::vector<FloorStroke> hulls; ///< empty: not worth while
  FloorRuns runs;                 ///< owners: strokes
  /// Of each hull: how far before a member's lower end and beyond its upper one its cells may lie.
  struct Pads {
    double before_mm = 0.0, beyond_mm = 0.0;
  };
  std::vector<Pads> pads;

  /// Calls take(stroke) for all members that may have cells from `begin_mm` to `end_mm` along the hull.
  template <class Take>
  void for_members(std::size_t hull, double begin_mm, double end_mm, const Take &take) const {
    const FloorStroke &h = hulls[hull];
    if (h.run_count == 0)
      return take(h.owner);
    const double *joint = runs.joint_mm.data() + h.run_first;
    const std::size_t last = h.run_count - 1;
    std::size_t at = joints_before(joint, last, h.run_count / h.length_mm, begin_mm - pads[hull].beyond_mm);
    take(runs.owner[h.run_first + at]);
    while (at < last && joint[at] <= end_mm + pads[hull].before_mm)
      take(runs.owner[h.run_first + ++at]);
  }
};

/// Strokes in the order of the path.
FloorHulls floor_hulls(std::span<const FloorStroke> strokes, const std::vector<Flank> &flanks, int threads);

/// Balls, maybe grown or worn a little, on lines that are not too steep: their contact lies near the cell.
inline bool has_short_form(const FloorStroke &stroke, const Flank &flank) {
  constexpr double kSteepest = 0.5;
  return flank.is_nearly_ball && !stroke.is_arc && stroke.slope <= kSteepest;
}

} // namespace asperity
