// Lower a floor chart under the bent cutter: exact lower envelope of every pass over every cell.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

#include <algorithm>
#include <cstddef>

namespace asperity {

/// Joined moves in one line are swept as one where that moves no point of the path by more than this, a tenth
/// of the sweep's own accuracy [mm].
inline constexpr double kSameLine_mm = 1e-7;

/// Longer paths are swept in portions of about so many strokes (moves, or what they were merged to), and of
/// no more pieces than that, so that memory does not grow with them.
inline constexpr std::size_t kFloorSweepStrokes = std::size_t{1} << 17;
inline constexpr std::size_t kFloorSweepPieces = std::size_t{1} << 20;
/// Taken while so many pieces are swept [bytes].
constexpr double floor_sweep_bytes(double pieces) {
  return 280.0 * std::min(pieces, 1.25 * double(kFloorSweepStrokes)) +
         24.0 * std::min(pieces, double(kFloorSweepPieces));
}

/// Lowers chart.envelope_mm (height above wanted) and sets chart.owner: envelope = min over the path of
/// tip height + axial offset + profile.height_at(plan distance to the tip, bent as node 0 says) - wanted.
/// For the plan offset the mean of left[0] and right[0] is used. Threads and cancelling as in sweep_wall.
/// Joined straight moves are merged where no point of the path moves by more than merge_within_mm in space:
/// the surface moves by no more along its own normal. Owners stay those of the single moves (the move under
/// the contact; where a flat tip lies on a cell, the first that reached it). 0 merges nothing.
bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress,
                 double merge_within_mm = kSameLine_mm);

} // namespace asperity
