// The wall of the speed measurements: a dial bezel's bore, fifteen laps of a flat cutter, every tooth
// counted.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/chart/wall_chart.h"
#include "asperity/sweep/tooth_passes.h"

#include <cstddef>
#include <span>
#include <vector>

namespace asperity::bench {

inline constexpr double kBore_mm = 13.1; ///< radius
inline constexpr double kCutter_mm = 3.0;
inline constexpr double kDepth_mm = 15.0;
inline constexpr double kHelix_rad = 0.5235987755982988; ///< 30 degrees
inline constexpr double kRunout_mm = 0.005;              ///< the second tooth is this much shorter
inline constexpr int kTeeth = 2, kLaps = 15, kPassesPerLap = 2500;

struct WallCase {
  bool has_varying_feed = false; ///< feed swings by a third, three times a lap
  std::size_t columns = 16000, rows = 300;
};

/// Where the axis stands [rad] when tooth pass i (need not be whole) of a lap faces the wall at height 0.
double pass_angle_rad(const WallCase &job, int lap, double pass);
/// The inverse: how many tooth passes have gone by when the axis stands at an angle, at height 0.
double passes_at(const WallCase &job, int lap, double angle_rad);
/// Passes by which an edge a height further up comes later.
double passes_up(double z_mm);
/// Lap k works from k mm below the top.
inline double lap_tip_mm(int lap) { return kDepth_mm - double(lap + 1); }

/// Height e along a ray of the surface that one tooth leaves with the axis `angle_rad` beside the ray:
/// double precision, circle by circle.
double tooth_surface_mm(double angle_rad, double tooth_mm);

/// The plain way: every tooth pass lowers the rays within 0.3 mm, ray by ray in double precision. Only
/// passes `first` to `first + count` of the fifteenth lap, on all rows.
void lay_passes_plainly(std::vector<double> &e_mm, const WallCase &job, int first, int count);

/// Least height over every tooth of every lap that reaches a ray.
double reference_mm(const WallCase &job, std::size_t column, std::size_t row);
double worst_wall_error_mm(std::span<const float> e_mm, const WallCase &job, int rays);

/// The laps as the sweep room takes them.
std::vector<ToothLap> tooth_laps(const WallCase &job);
/// The bore's chart from its first column on, nothing laid.
WallChart bore_chart(std::size_t columns);

double column_rad(const WallCase &job, std::size_t column);
double row_mm(const WallCase &job, std::size_t row);

} // namespace asperity::bench
