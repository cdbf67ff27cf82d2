// What the cut wall looks like away from flaws: the level from which a lip stands out.
#pragma once

#include "robust.h"

#include "asperity/finding/find_all.h"

namespace asperity {

/// The lip at the base, column by column.
struct BaseRows {
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  /// First row from below that is clean wall; 0 = no lip; kNone = the column is nowhere cut.
  std::vector<std::size_t> first_clean;
  /// Stands out more than this [mm]: a lip where a pass reaches, ...
  double least_proud_mm = 0;
  /// ... and where no pass reaches, which leaves a sharp edge.
  double least_edge_mm = 0;
};

/// A straight line over height (taper, a tapered cutter) plus each column's own offset (ovality, corners).
struct WallReference {
  bool usable = false;                  ///< some of the wall is cut
  StraightLine line;                    ///< e over z
  std::vector<double> column_offset_mm; ///< NaN where the column is nowhere cut
  double spread_mm = 0;                 ///< robust deviation of cut cells from it
  BaseRows base;

  double at(std::size_t column, double z_mm) const { return line.at(z_mm) + column_offset_mm[column]; }
};

/// threads 0 = all cores.
WallReference wall_reference(const WallChart &chart, int threads);

/// The shared one; without that made anew.
WallReference reference_on(const Evidence &evidence, int feature, const WallChart &chart);

/// Height of row j's lower edge (rows stand at the middle of their cells) [mm].
double row_bottom_mm(const WallChart &chart, std::size_t row);
double row_top_mm(const WallChart &chart, std::size_t row);

} // namespace asperity
