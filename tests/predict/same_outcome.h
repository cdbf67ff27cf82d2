// Two predictions compared bit for bit.
#pragma once

#include "asperity/predict/outcome.h"

#include <string>

namespace asperity::test {

/// Empty when every chart, sample, piece, finding, roughness, size and check agrees; else what differs.
std::string difference(const Outcome &a, const Outcome &b);

} // namespace asperity::test
