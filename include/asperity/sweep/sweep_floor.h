// Lower a floor chart under the bent cutter: exact lower envelope of every pass over every cell.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

namespace asperity {

/// Joined moves in one line are swept as one where that moves no point of the path by more than this, a tenth
/// of the sweep's own accuracy [mm].
inline constexpr double kSameLine_mm = 1e-7;

/// Taken while sweeping, for every piece of the path [bytes].
inline constexpr double kFloorSweepBytesPerPiece = 210.0;

/// Lowers chart.envelope_mm (height above wanted) and sets chart.owner: envelope = min over the path of
/// tip height + axial offset + profile.height_at(plan distance to the tip, bent as node 0 says) - wanted.
/// For the plan offset the mean of left[0] and right[0] is used. Same threading promise as sweep_wall.
/// Joined straight moves are merged where no point of the path moves by more than merge_within_mm in space:
/// the surface moves by no more along its own normal. Owners stay those of the single moves (the move under
/// the contact; where a flat tip lies on a cell, the first that reached it). 0 merges nothing.
bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                 double merge_within_mm = kSameLine_mm);

} // namespace asperity
