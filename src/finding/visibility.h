// How plainly a line or step shows: the eye and the finger follow its slope, the job its depth.
#pragma once

#include "asperity/chart/wall_chart.h"
#include "asperity/finding/finding.h"
#include "asperity/job/feature.h"

namespace asperity {

/// Steepest change of the cut surface along s within reach_mm of a cell [um/mm], over four columns (noise of
/// single cells evens out). Round closed outlines it wraps.
double steepest_along_um_per_mm(const WallChart &chart, std::size_t column, std::size_t row, double reach_mm);

/// Usual change of the cut surface from `lower_row` to the row above [um/mm]: median over the columns.
double step_slope_um_per_mm(const WallChart &chart, std::size_t lower_row);

/// Adds the slope to the finding, and says whether the depth is within what the feature wants.
void add_visibility(Finding &finding, double slope_um_per_mm, double depth_um, const FinishWanted &wanted);

} // namespace asperity
