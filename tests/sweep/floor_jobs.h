// Cutters, pieces and paths for the floor tests.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

#include <random>
#include <string>
#include <vector>

namespace asperity::floor_test {

struct NamedProfile {
  std::string name;
  CutterProfile profile;
};

/// Every kind of cutter, also as grown by runout or shrunk by wear.
std::vector<NamedProfile> all_profiles();

SweptPath path_with(const CutterProfile &profile);
AxisOffset offset(Vec2 in_plan, double axial_mm);
/// Adds a piece owned by its own number.
void add(SweptPath &path, const Curve &curve, bool joins_previous = false);
void add(SweptPath &path, const Curve &curve, const AxisOffset &begin, const AxisOffset &end,
         bool joins_previous = false);
/// Cells of 0.1 mm over a square round the origin, wanted level at base.
FloorChart square_chart(double half_mm, double spacing_mm = 0.1, double base_mm = -1.0);
/// Sweeps with two threads and no wish to stop.
void sweep(FloorChart &chart, const SweptPath &path, int threads = 2);

/// Joined random lines and arcs, wandering about the chart; turns up to `turn_rad` at each joint.
SweptPath wandering_path(const CutterProfile &profile, unsigned number, int pieces, double turn_rad,
                         double slope, double bend_mm);

} // namespace asperity::floor_test
