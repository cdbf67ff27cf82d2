// The rim of a tower clock's line sheave with a chart drawn from a formula: the scene most finders are
// checked on.
#pragma once

#include "../../src/finding/found.h"

#include "asperity/base/units.h"

#include <functional>

namespace asperity::test {

inline constexpr double kRimDiameter_mm = 62.0;
inline constexpr double kCutterDiameter_mm = 6.0;
inline constexpr double kStock_mm = 0.5; ///< blank beyond the wall

/// Outside wall, z 0 to 14 mm, centre (10, 20). Tests change what they need.
inline WallFeature rim_wall() {
  WallFeature wall;
  wall.name = "sheave rim";
  wall.centre = {10, 20};
  wall.diameter_mm = kRimDiameter_mm;
  wall.outline = Outline::circle(wall.centre, wall.diameter_mm);
  wall.z_bottom_mm = 0;
  wall.z_top_mm = 14;
  return wall;
}

/// Wall chart whose envelope is e(s, z); NaN from e = no pass reaches there.
inline WallChart drawn_chart(const WallFeature &wall, double spacing_mm,
                             const std::function<double(double s, double z)> &e) {
  WallChart chart =
      make_wall_chart(wall.outline, wall.side == Side::inside, wall.z_bottom_mm, wall.z_top_mm, spacing_mm);
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const double value = e(chart.s_mm[i], chart.z_mm[j]);
      chart.blank_mm[chart.at(i, j)] = static_cast<float>(kStock_mm);
      if (!std::isnan(value))
        chart.envelope_mm[chart.at(i, j)] = static_cast<float>(value);
    }
  return chart;
}

inline Cutter flat_cutter() {
  Cutter cutter;
  cutter.diameter_mm = kCutterDiameter_mm;
  cutter.flute_length_mm = 20;
  cutter.stick_out_mm = 25;
  cutter.shank_diameter_mm = 6;
  cutter.runout_mm = 0;
  return cutter;
}

/// Everything a finder looks at, owned.
struct Scene {
  Job job;
  TimedPath path;
  CutRecord cut;
  std::vector<Chart> charts;

  Evidence evidence() const { return {job, path, cut, charts}; }
  WallChart &wall() { return std::get<WallChart>(charts[0]); }
  FloorChart &floor() { return std::get<FloorChart>(charts[0]); }
};

inline Scene wall_scene(const WallFeature &wall, double spacing_mm,
                        const std::function<double(double s, double z)> &e) {
  Scene scene;
  scene.job.features = {wall};
  scene.job.cutters = {flat_cutter()};
  scene.job.material.name = "PETG";
  scene.charts = {drawn_chart(wall, spacing_mm, e)};
  return scene;
}

/// A feed move of cutter 1 at steady speed, program line `line`.
inline PathPiece feed_piece(const Curve &curve, std::uint32_t line, double feed_mm_per_s = 10.0) {
  PathPiece piece;
  piece.curve = curve;
  piece.length_mm = curve.length_mm();
  piece.v_in_mm_per_s = piece.v_peak_mm_per_s = piece.v_out_mm_per_s = piece.feed_mm_per_s = feed_mm_per_s;
  piece.duration_s = piece.length_mm / feed_mm_per_s;
  piece.line = line;
  piece.tool = 1;
  piece.kind = MoveKind::feed;
  return piece;
}

/// The named number of a finding; fails the test by NaN if it has none of that name.
inline double quantity(const Finding &finding, const std::string &name) {
  for (const Quantity &quantity : finding.size)
    if (quantity.name == name)
      return quantity.value;
  return std::numeric_limits<double>::quiet_NaN();
}

/// Shortest way round between two angles [deg].
inline double degrees_apart(double a, double b) { return std::abs(std::remainder(a - b, 360.0)); }

} // namespace asperity::test
