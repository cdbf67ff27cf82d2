// Lower a floor chart under the bent cutter: exact lower envelope of every pass over every cell.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

namespace asperity {

/// Lowers chart.envelope_mm (height above wanted) and sets chart.owner: envelope = min over the path of
/// tip height + axial offset + profile.height_at(plan distance to the tip, bent as node 0 says) - wanted.
/// For the plan offset the mean of left[0] and right[0] is used. Same threading promise as sweep_wall.
bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress);

} // namespace asperity
