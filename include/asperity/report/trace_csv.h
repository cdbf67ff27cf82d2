// A trace as a table for other programs: comment lines that say what it is, then one row a point.
#pragma once

#include "asperity/report/trace_view.h"

#include <string>

namespace asperity {

/// Lines beginning with '#' state job, feature, direction, place, cutoff, evaluation and units. Then the
/// columns position_mm,profile_um,waviness_um,roughness_um,line; line 0 = not cut. Decimal points, commas
/// between, line feeds at the ends.
std::string trace_csv_text(const TraceView &view);

} // namespace asperity
