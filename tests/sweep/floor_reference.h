// A floor envelope found by looking at every piece everywhere: slow, and independent of the closed forms.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

#include <string>
#include <vector>

namespace asperity::floor_test {

/// Where a cell's lowest contact lies.
struct Contact {
  double z_mm;        ///< +infinity where no piece reaches
  double distance_mm; ///< in plan, from the tip's axis to the cell
};

/// Samples every piece densely and narrows every dip down by golden section.
Contact reference_contact(const SweptPath &path, Vec2 cell);

/// Compares `cells` random cells of a swept chart with the reference; those whose contact lies at the very
/// rim of the cutter, where rounding decides whether they are reached, are left out. Fails beyond the
/// tolerance.
void expect_reference(const FloorChart &chart, const SweptPath &path, int cells, double tolerance_mm,
                      const std::string &what);

} // namespace asperity::floor_test
