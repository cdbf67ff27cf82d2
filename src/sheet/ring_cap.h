// A flat face between closed rings: one outside, any number of holes.
#pragma once

#include "asperity/base/vec.h"

#include <array>
#include <cstddef>
#include <vector>

namespace asperity {

/// Triangles over the points of all rings, counted through (outer first); each runs counter-clockwise seen
/// from above. outer runs counter-clockwise, holes too; they neither touch nor cross. Every edge of a ring is
/// the edge of exactly one triangle. Empty if the rings cannot be filled.
std::vector<std::array<std::size_t, 3>> ring_cap(const std::vector<Vec2> &outer,
                                                 const std::vector<std::vector<Vec2>> &holes);

} // namespace asperity
