// The sweeps, with the size of their portions to choose: for them and for tests.
#pragma once

#include "floor_path.h"

#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

namespace asperity {

/// As sweep_floor.
bool sweep_in_portions(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                       const FloorPortions &portions);

/// As sweep_wall; so many pieces make a portion.
bool sweep_in_portions(WallChart &chart, const SweptPath &path, int threads, const Progress &progress,
                       std::size_t pieces);

} // namespace asperity
