// Joined straight strokes that run on in one line become one stroke; who owned which part is kept.
#pragma once

#include "floor_stroke.h"

namespace asperity {

/// Members of merged strokes, each from its low end up.
struct FloorRuns {
  std::vector<double> joint_mm; ///< distance from the merged stroke's low end at which a member ends
  std::vector<std::uint32_t> owner;
};

struct MergeRule {
  /// No point of the path is moved farther than this in space, so no surface along its own normal either
  /// [mm].
  double within_mm = 0.0;
  /// Owners rise along the path, so that strokes of several owners still sort by owner.
  bool may_mix_owners = false;
};

/// Merges what follows on in `strokes`; appends members to `runs`.
std::vector<FloorStroke> merged_strokes(const std::vector<FloorStroke> &strokes, const MergeRule &rule,
                                        FloorRuns &runs);

} // namespace asperity
