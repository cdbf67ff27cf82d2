// Findings of two plans set against each other: gone, new, better, worse, same.
#pragma once

#include "asperity/predict/outcome.h"

#include <vector>

namespace asperity {

enum class Change { gone, fresh, better, worse, same };

/// Indices into the findings of the first and the other outcome; -1 = none there.
struct MatchedFinding {
  int first = -1, other = -1;
  Change change = Change::same;
};

/// Witness lines, touched keep-outs and rapids through stock are matched where they lie; every other kind is
/// found once a feature (or once a job) and matched by that.
inline constexpr double kSamePlace_mm = 3.0;
/// Leading sizes no farther apart than this share of the larger are the same.
inline constexpr double kSameShare = 0.05;

/// Two findings match when kind and feature name agree and, for kinds matched by place, they lie within
/// kSamePlace_mm in plan; the nearest pair is taken first. A lower weight is better; at equal weight the
/// leading size decides (a margin is better when larger, all else when smaller). Order: the first outcome's,
/// then the new ones.
std::vector<MatchedFinding> matched_findings(const Outcome &first, const Outcome &other);

/// "gone", "new", "better", "worse", "same".
std::string_view name_of(Change change);

} // namespace asperity
