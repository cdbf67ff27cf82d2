// The chart at the picture's pixels: nothing lost, nothing invented; ranges and ticks as promised.
#include "raster.h"

#include "colour_range.h"
#include "relief.h"
#include "support/sheave_outcome.h"
#include "ticks.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {

namespace {

constexpr double kFloat_um = 1e-4; // residuals are float millimetres of about 0.01

/// A floor that rises by 1 um per mm along x.
FloorChart ramp(double spacing_mm) {
  FloorChart chart = make_floor_chart({0, 0}, {40, 20}, spacing_mm, 0.0);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i)
      chart.envelope_mm[chart.at(i, j)] = static_cast<float>(1e-3 * chart.x_mm(i));
  return chart;
}

} // namespace

TEST(Raster, ARampStaysARampWhetherPixelsAreWiderOrNarrowerThanCells) {
  for (double spacing_mm : {0.05, 2.0}) {
    const Chart chart = ramp(spacing_mm);
    const Plane plane = plane_of(chart, {});
    const Raster raster = rasterise(chart, plane, 200, 100);
    for (int x = 20; x < 180; x += 7) // away from the ends, where the outermost cells are held
      EXPECT_NEAR(raster.residual_um[raster.at(x, 50)], plane.x_low_mm + (x + 0.5) * raster.x_mm_per_px, 0.02)
          << "a tent over cells placed unevenly round a pixel is off by less than a tenth of a pixel";
  }
}

TEST(Raster, ALineNarrowerThanAPixelIsNotLost) {
  FloorChart chart = make_floor_chart({0, 0}, {100, 10}, 0.05, 0.0);
  constexpr double kLine_um = -20.0;
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i)
      chart.envelope_mm[chart.at(i, j)] = i == 1003 ? static_cast<float>(1e-3 * kLine_um) : 0.0f;
  const Chart any = chart;
  const Raster raster = rasterise(any, plane_of(any, {}), 250, 25); // 8 cells a pixel
  float deepest = 0.0f;
  for (float e : raster.residual_um)
    deepest = std::min(deepest, e);
  EXPECT_LT(deepest, kLine_um / 16.0); // at least half its share of the pixel
}

TEST(Raster, TheLipIsToldFromOtherStandingStockAndFromSkin) {
  WallChart wall = test_support::rim_chart(0.2);
  wall.envelope_mm[wall.at(500, 40)] = wall.blank_mm[wall.at(500, 40)] + 1.0f;
  wall.blank_mm[wall.at(300, 50)] = -0.2f;
  const Chart chart = wall;
  const auto columns = static_cast<int>(wall.columns()), rows = static_cast<int>(wall.rows());
  Plane plane = plane_of(chart, {});
  plane.seam_mm = 0.0; // pixel = column
  const Raster raster = rasterise(chart, plane, columns, rows);
  EXPECT_EQ(raster.surface[raster.at(10, rows - 1)], Surface::lip);
  EXPECT_EQ(raster.surface[raster.at(500, rows - 1 - 40)], Surface::standing);
  EXPECT_EQ(raster.surface[raster.at(300, rows - 1 - 50)], Surface::skin);
  EXPECT_EQ(raster.surface[raster.at(10, 0)], Surface::cut);
}

TEST(Plane, AWallIsCutOpenAwayFromItsFindings) {
  const Chart chart = test_support::rim_chart(0.5);
  const double length_mm = std::get<WallChart>(chart).outline.length_mm();
  EXPECT_NEAR(plane_of(chart, {0.0}).seam_mm, 0.5 * length_mm, 1e-9);
  EXPECT_NEAR(plane_of(chart, {0.5 * length_mm}).seam_mm, 0.0, 1e-9);
}

TEST(Plane, AnInsideWallRunsTheOtherWay) {
  const Outline bore = Outline::circle({0, 0}, 20);
  const Chart chart = make_wall_chart(bore, true, 0, 5, 0.5);
  Plane plane = plane_of(chart, {});
  plane.seam_mm = 0.0;
  EXPECT_GT(plane.x_offset_mm(1.0), plane.x_offset_mm(2.0));
}

TEST(ColourRange, HoldsTheSurfaceAndCountsWhatLiesBeyond) {
  const Chart chart = ramp(0.5); // 0 to 40 um
  const Raster raster = rasterise(chart, plane_of(chart, {}), 400, 200);
  const ColourRange chosen = colour_range(raster, 0.0);
  EXPECT_NEAR(chosen.half_um, 40.0, 1e-9);
  EXPECT_EQ(chosen.share_above, 0.0);
  const ColourRange forced = colour_range(raster, 10.0);
  EXPECT_NEAR(forced.share_above, 0.75,
              0.01); // derived: 30 of 40 mm lie above 10 um; one pixel column is 0.0025
  EXPECT_EQ(forced.share_below, 0.0);
}

TEST(ColourRange, AFewFarValuesDoNotFlattenTheRest) {
  WallChart wall = test_support::rim_chart(0.2);
  for (std::size_t i = 0; i < 10; ++i)
    wall.envelope_mm[wall.at(i, 60)] = 0.9f; // 900 um
  const Chart chart = wall;
  const ColourRange range = colour_range(rasterise(chart, plane_of(chart, {}), 1000, 200), 0.0);
  EXPECT_LE(range.half_um, 25.0); // median 8 to 10, six times the spread of 2 beyond
  EXPECT_GT(range.share_above, 0.0);
}

TEST(ColourRange, ASurfaceFarOffIsShownAboutItsMedian) {
  FloorChart chart = ramp(0.5);
  for (float &e : chart.envelope_mm)
    e += 1.0f;
  const Chart any = chart;
  const ColourRange range = colour_range(rasterise(any, plane_of(any, {}), 400, 200), 0.0);
  EXPECT_TRUE(range.about_median);
  EXPECT_NEAR(range.centre_um, 1020.0, 0.5); // the middle of 1000 .. 1040, to a pixel
  EXPECT_NEAR(range.half_um, 20.0, 1e-9);
}

TEST(Relief, AFlatSurfaceIsEvenAndARampIsLitByItsSlope) {
  FloorChart flat = make_floor_chart({0, 0}, {40, 20}, 0.5, 0.0);
  std::fill(flat.envelope_mm.begin(), flat.envelope_mm.end(), 0.01f);
  const auto relief = [](const FloorChart &floor) {
    const Chart chart = floor;
    const Raster raster = rasterise(chart, plane_of(chart, {}), 200, 100);
    return relief_of(raster, colour_range(raster, 0.0));
  };
  const Relief even = relief(flat), sloped = relief(ramp(0.5));
  EXPECT_TRUE(even.is_even);
  EXPECT_NEAR(even.light[50 * 200 + 100], 1.0, kFloat_um);
  EXPECT_FALSE(sloped.is_even);
  EXPECT_GT(sloped.light[50 * 200 + 100], 1.0f); // rises to the right, so it faces the lamp on the left
}

TEST(Ticks, AreRoundNumbersApart) {
  const Ticks ticks = ticks_between(-3.0, 14.0, 1.3);
  EXPECT_EQ(ticks.values, (std::vector<double>{-2, 0, 2, 4, 6, 8, 10, 12, 14}));
  EXPECT_EQ(ticks.decimals, 0);
  EXPECT_EQ(ticks_between(0.0, 1.0, 0.03).decimals, 2);
  EXPECT_TRUE(ticks_between(1.0, 1.0, 0.1).values.empty());
  EXPECT_EQ(tick_text(-0.0, 1), "0.0");
}

TEST(RoundUp, GivesShortNumbersNotBelow) {
  EXPECT_DOUBLE_EQ(round_up(10.0), 10.0);
  EXPECT_DOUBLE_EQ(round_up(10.1), 15.0);
  EXPECT_DOUBLE_EQ(round_up(0.023), 0.025);
  EXPECT_DOUBLE_EQ(round_up(9.0), 10.0);
}

} // namespace asperity
