// Floor marks of tooth and edge, and the band that material and layers add.
#include "asperity/surface/floor_marks.h"
#include "asperity/surface/kinematic.h"
#include "asperity/surface/material_band.h"
#include "asperity/surface/profile_parameters.h"

#include "asperity/base/units.h"
#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

/// Along the feed at this place across, ten marks of 1000 points.
std::vector<double> along(const EndFloor &floor, double across) {
  std::vector<double> heights;
  for (int i = 0; i < 10000; ++i)
    heights.push_back(end_floor_texture_mm(floor, (i + 0.5) / 1000 * floor.pitch_mm, across));
  return heights;
}

constexpr double kPeak = 3e-3; // a peak half a sample off: 2 / 1000, and slack for rounding

} // namespace

TEST(EndFloor, CornerRadiusLeavesArcCusps) {
  const EndFloor floor{3, 0.5, 0, 0.05};
  for (const double across : {0.0, 1.0, -2.0}) {
    const auto p = profile_parameters(about_mean(along(floor, across)), 0.00005);
    EXPECT_NEAR(um_from_mm(p.rz_mm), 0.625391, kPeak * 0.625391);
    EXPECT_NEAR(um_from_mm(p.ra_mm), 0.160375, kPeak * 0.160375);
  }
}

TEST(EndFloor, DishedCornerLeavesASawtooth) {
  const EndFloor floor{3, 0, std::tan(rad_from_deg(2)), 0.05};
  const auto p = profile_parameters(about_mean(along(floor, 0)), 0.00005);
  EXPECT_NEAR(um_from_mm(p.rz_mm), 1.746038, kPeak * 1.746038);
  EXPECT_NEAR(p.ra_mm, p.rz_mm / 4, kPeak * p.ra_mm);
  // The edge rises from a corner backwards to the centre: low just behind a mark, high just before it.
  EXPECT_NEAR(end_floor_texture_mm(floor, 0.0499, 0), 0.0001 * std::tan(rad_from_deg(2)), 1e-9);
  EXPECT_NEAR(end_floor_texture_mm(floor, 0.0001, 0), 0.0499 * std::tan(rad_from_deg(2)), 1e-9);
}

TEST(EndFloor, MarksAreArcsOfTheCuttersCircle) {
  // Aside by y the leading half of the circle lies R - sqrt(R^2 - y^2) behind its foremost point.
  const EndFloor floor{3, 0, std::tan(rad_from_deg(2)), 0.5};
  const double behind = 3 - std::sqrt(9 - 4.0);
  for (const double x : {0.1, 0.2, 0.37})
    EXPECT_NEAR(end_floor_texture_mm(floor, x - behind, 2), end_floor_texture_mm(floor, x, 0), 1e-12);
  EXPECT_EQ(end_floor_texture_mm(floor, 0.2, 3.5), 0);
}

TEST(BallFloor, RowsAndMarksAreCirclesOfTheBall) {
  const BallFloor floor{3, 0.1, 0.5, 0};
  EXPECT_NEAR(um_from_mm(ball_floor_texture_mm(floor, 0, 0.25)), 10.434814, 6e-7); // R 3, step 0.5
  EXPECT_NEAR(ball_floor_texture_mm(floor, 0.05, 1.0), arc_cusp_mm(3, 0.1), 1e-15);
  EXPECT_NEAR(ball_floor_texture_mm(floor, 0.3, -1.0), 0, 1e-15);
}

TEST(MaterialBand, ContributionsAddByRootOfSquares) {
  EXPECT_DOUBLE_EQ(combined_ra_um(3, 4), 5);
  const RaBand band = ra_band(1.6, {0, 1.2});
  EXPECT_DOUBLE_EQ(band.low_um, 1.6);
  EXPECT_DOUBLE_EQ(band.high_um, 2.0);
}

TEST(MaterialBand, TurnedPrintedPetgIsTheMaterialsOwn) {
  // [Study of turned printed PETG] insert radius 0.4, 0.0506 mm/rev: Ra 1.94 um measured, 0.20 um by f^2 / 32
  // r.
  const double geometric = um_from_mm(shop_ra_mm(0.4, 0.0506));
  EXPECT_NEAR(geometric, 0.20, 0.005);
  const RaBand band = ra_band(geometric, {1.5, 2.0}); // the printed PETG row of the material table
  EXPECT_LT(band.low_um, 1.94);
  EXPECT_GT(band.high_um, 1.94);
}

TEST(MaterialBand, PrintedWallsByLayerAndLean) {
  // (69..72) t / cos(lean) [Pandey 2003, from memory]: 14 um at t 0.2, upright.
  const RaBand upright = printed_wall_ra_um(0.2, 0);
  EXPECT_NEAR(upright.low_um, 13.8, 1e-9);
  EXPECT_NEAR(upright.high_um, 14.4, 1e-9);
  EXPECT_NEAR(printed_wall_ra_um(0.2, rad_from_deg(60)).low_um, 27.6, 1e-9);
  EXPECT_EQ(printed_wall_ra_um(0.2, rad_from_deg(80)).low_um,
            printed_wall_ra_um(0.2, rad_from_deg(70)).low_um);
}

TEST(MaterialBand, BeadBoundIsTheRaOfSemicircles) {
  // Semicircular arcs of radius 1 by integration; 18 um at t 0.2.
  const auto p = profile_parameters(about_mean(sampled(arc_cusp(2), 100000)), 1e-5);
  EXPECT_NEAR(printed_bead_ra_um(0.2), 100 * p.ra_mm, 1e-3);
  EXPECT_NEAR(printed_bead_ra_um(0.2), 18, 0.2);
}
