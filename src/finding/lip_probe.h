// Sweeps a single column finely to find where the cut wall really ends.
#pragma once

#include "asperity/chart/wall_chart.h"
#include "asperity/sweep/swept_path.h"

#include <optional>

namespace asperity {

/// Heights found at the foot of one column [mm, part frame].
struct BaseEdge {
  double reached_mm = 0; ///< lowest height any pass reaches
  double clean_mm = 0;   ///< lowest height at which the wall stands proud by no more than asked
};

struct ProbeRange {
  double z_low_mm = 0, z_high_mm = 0; ///< z_high: known to be clean
  double proud_limit_mm = 0;          ///< e above which the wall is not clean
};

/// Narrows both edges down to kProbeStep_mm. Nothing if no pass reaches z_high.
std::optional<BaseEdge> probe_base(const WallChart &chart, const SweptPath &path, std::size_t column,
                                   const ProbeRange &range);
inline constexpr double kProbeStep_mm = 1e-4;

/// The pieces that can touch the wall at p below z_high [mm], in order.
SweptPath pieces_near(const SweptPath &path, Vec2 p, double reach_mm, double z_high_mm);

} // namespace asperity
