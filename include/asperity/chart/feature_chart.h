// Charts of a job's features, whole or in part: the blank's surface filled in, nothing swept yet.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"
#include "asperity/job/job.h"

namespace asperity {

/// The wall's own error stands at a floor's edge; the floor is judged from here inwards [mm].
inline constexpr double kFloorEdge_mm = 0.1;

/// Of a wall, on given columns and rows; both must rise, s within the outline. threads 0 = all cores.
WallChart wall_chart_of(const Job &job, const WallFeature &wall, std::vector<double> s_mm,
                        std::vector<double> z_mm, int threads);
/// The same evenly spaced over the whole wall.
WallChart wall_chart_of(const Job &job, const WallFeature &wall, double spacing_mm, int threads);

/// Of a floor or dome over a box. Nothing is wanted (NaN) off the feature, on islands, and nearer to either's
/// edge than kFloorEdge_mm.
FloorChart floor_chart_of(const Job &job, const Feature &feature, Vec2 low_mm, Vec2 high_mm,
                          double spacing_mm, int threads);

} // namespace asperity
