// Teeth followed one by one through time: the surface their corners leave, with no formula for marks.
#pragma once

#include "texture/bench.h"

namespace asperity::bench {

/// Tooth 0 points along +x at time 0 and turns clockwise. Lowest height any tooth corner leaves on each
/// column's ray, above the nominal wall [mm], on a strip within one element of the outline.
std::vector<double> walked_wall_mm(const Bench &bench, const WallChart &strip);

} // namespace asperity::bench
