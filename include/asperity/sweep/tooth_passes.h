// Lay the marks of every tooth pass of many laps on a wall at once.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/wall_chart.h"

#include <span>
#include <vector>

namespace asperity {

/// One lap of a cutter along all columns of a chart. Each tooth leaves a hollow e = base + lag + d^2 (bow +
/// bow4 d^2) every spindle turn, d the distance along the columns from the hollow's middle [mm].
struct ToothLap {
  double low_mm = 0, high_mm = 0; ///< rows it reaches
  /// Spindle turns gone by when the axis stands abreast of each column; steadily rising or falling.
  std::vector<double> turns;
  /// Turns by which a place a millimetre further up meets the same tooth later (helix).
  double turns_per_mm_up = 0;
  double base_mm = 0;            ///< e at the bottom of the longest tooth's hollow
  std::vector<double> lag_mm{0}; ///< of each tooth, in the order they pass: how much shorter it is
  double bow_per_mm = 0, bow4_per_mm3 = 0;
};

/// Lowers chart.envelope_mm to the lowest hollow of all teeth and laps; owners stay as they are. Every ray
/// asks each tooth for its nearest pass, so time does not grow with the number of passes. Feed may vary along
/// the columns: place over turns is taken as a parabola half a turn to either side. Measured against single
/// passes in double precision: 0.003 nm with the feed swinging by a third three times round a bore, 0.12 nm
/// where it swings within 3 mm. Same threading promise as sweep_wall.
bool lay_tooth_passes(WallChart &chart, std::span<const ToothLap> laps, int threads,
                      const Progress &progress);

} // namespace asperity
