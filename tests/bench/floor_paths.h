// Floor jobs of the speed measurements: the same raster in long, in tiny and in tiny curved moves.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/sweep/swept_path.h"

#include <vector>

namespace asperity::bench {

inline constexpr double kBall_mm = 3.0;  ///< radius
inline constexpr double kSquare_mm = 40; ///< side of the floor

struct FloorCase {
  int lines = 200;        ///< passes side by side
  int moves_per_line = 1; ///< joined
  double wave_mm = 0.0;   ///< height of a sine wave of 20 mm along each pass
  double spacing_mm = 0.02;
  double grown_mm = 0.0; ///< of the ball, by runout
};

/// Height of the ball's tip on pass `line` at x: straight along x, sloped up to 0.035, and a wave if asked.
double tip_mm(const FloorCase &job, int line, double x_mm);
double line_y_mm(const FloorCase &job, int line);

SweptPath path_of(const FloorCase &job);
FloorChart chart_of(const FloorCase &job);

/// Plain stamping: the ball set down on every cell's length of the path, each time lowering the square under
/// it. Only every `stride`-th pass is stamped. Loops are plain, vectorised by the compiler for the machine at
/// hand.
void stamp(FloorChart &chart, const FloorCase &job, int stride);

/// Largest difference [mm] between a swept chart and a double-precision search over every move near a cell,
/// over `cells` random cells. The search knows no closed form of the sweep: it narrows each move down by
/// golden section.
double worst_error_mm(const FloorChart &chart, const FloorCase &job, int cells);

} // namespace asperity::bench
