// Which strokes cut their rows alike, and where.
#pragma once

#include "sweep_wall_reach.h"

namespace asperity {

/// What rows need of stroke i on one side; adds the columns its contact passes to what was found.
Passing plan_passing(WallPlan &plan, Found &found, const WallChart &chart, const ColumnFinder &columns,
                     const std::vector<Manner> &manners, std::size_t i, WallSide side);

} // namespace asperity
