// The cutter bent by its teeth, at all nodes at a time.
#pragma once

#include "asperity/cut/deflection.h"
#include "asperity/sweep/swept_path.h"
#include "tooth_integral.h"

#include <vector>

namespace asperity {

static_assert(kBendNodes == kEight);

/// Tip angles of every tooth at the moment one of them makes a wall at a node's height, node by node.
class WallTips {
public:
  /// `wall_rad`: where the wall is made, 0 for the left one and pi for the right.
  WallTips(const ToothGeometry &teeth, const Eight &node_mm, double wall_rad);

  /// Adds what the cutter bends under the teeth in one slice [mm], normal to the feed (+ left).
  void add_bend(const ReadySlice &slice, const ForceCoefficients &k, double feed_per_tooth_mm,
                const Eight &compliance_mm_per_N, Eight &bend_mm) const;

private:
  double pitch_rad_, least_rad_, most_rad_; ///< of tooth 0 over all nodes
  int first_tooth_;
  std::vector<Turns> tips_; ///< of one tooth after the other
};

} // namespace asperity
