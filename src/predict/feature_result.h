// What a gauge reads on a feature, and how its cut surface lies.
#pragma once

#include "asperity/finding/wall_references.h"
#include "asperity/predict/outcome.h"

namespace asperity {

/// `reference`: of a wall; null: it is worked out.
FeatureResult feature_result(const Feature &feature, const Chart &chart,
                             const WallReference *reference = nullptr);

} // namespace asperity
