// A chart boiled down to what fits in a table: statistics of the residual, and its mean along either
// direction.
#pragma once

#include "asperity/finding/find_all.h"

#include <cstddef>
#include <vector>

namespace asperity {

/// Of the residual over the cells a pass has cut [um]; NaN when there are none.
struct ResidualStatistics {
  std::size_t cells = 0;     ///< in the feature
  std::size_t cut_cells = 0; ///< reached by a pass
  double mean_um = 0, deviation_um = 0;
  double lowest_um = 0, highest_um = 0;
  double percentile_1_um = 0, median_um = 0, percentile_99_um = 0;
};

ResidualStatistics residual_statistics(const Chart &chart);

/// Mean residual in each stretch of one axis; NaN where nothing was cut.
struct Profile {
  std::vector<double> place_mm; ///< middle of the stretch
  std::vector<double> mean_um;
  std::vector<double> cut_share; ///< of the stretch's cells in the feature; NaN without any
};

struct ChartProfiles {
  Profile across; ///< over columns: s of a wall, x of a floor
  Profile up;     ///< over rows: z of a wall, y of a floor
};

/// Neighbouring columns or rows are joined so that no profile has more than `most` points.
ChartProfiles chart_profiles(const Chart &chart, std::size_t most);

} // namespace asperity
