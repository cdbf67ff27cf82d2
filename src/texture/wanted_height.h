// The wanted height of a floor or dome anywhere, and the stock above it.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/job/job.h"

namespace asperity {

/// Part frame [mm]; NaN off the feature, on its islands and within 0.1 mm of its edge, where the wall's own
/// error stands. Walls: NaN everywhere.
double wanted_height_mm(const Feature &feature, Vec2 p);
/// Height that a chart's wanted heights count from.
double base_height_mm(const Feature &feature);
/// Plan limit of a floor or dome.
const Outline &plan_outline(const Feature &feature);

/// A chart of the feature over a box, with the blank's surface filled in, nothing swept yet.
FloorChart floor_patch(const Job &job, const Feature &feature, Vec2 low_mm, Vec2 high_mm, double spacing_mm);
/// A strip of wall with the blank's surface filled in, nothing swept yet. s must rise within the outline.
WallChart wall_strip(const Job &job, const WallFeature &wall, std::vector<double> s_mm,
                     std::vector<double> z_mm);

} // namespace asperity
