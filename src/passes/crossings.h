// Where lines and circles cross: plane geometry.
#pragma once

#include "asperity/shape/outline.h"

#include <vector>

namespace asperity {

/// Crossings of the two elements continued to endless lines and full circles.
std::vector<Vec2> endless_crossings(const OutlineElement &a, const OutlineElement &b);

/// Places t along p(t) = origin + t * direction (unit vector) where the line meets the outline, rising.
std::vector<double> line_crossings(const Outline &outline, Vec2 origin, Vec2 direction);

} // namespace asperity
