// What a gauge reads on a feature, and how its cut surface lies.
#pragma once

#include "asperity/predict/outcome.h"

namespace asperity {

FeatureResult feature_result(const Feature &feature, const Chart &chart);

} // namespace asperity
