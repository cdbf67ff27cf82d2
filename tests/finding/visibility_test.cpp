// Slopes of drawn steps and grooves, and the words about what is wanted.
#include "../../src/finding/visibility.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

WallChart drawn_wall(double (*e_mm)(double s, double z)) {
  WallChart chart = make_wall_chart(Outline::circle({0, 0}, 60), false, 0, 10, 0.05);
  for (std::size_t row = 0; row < chart.rows(); ++row)
    for (std::size_t column = 0; column < chart.columns(); ++column) {
      chart.envelope_mm[chart.at(column, row)] =
          static_cast<float>(e_mm(chart.s_mm[column], chart.z_mm[row]));
      chart.blank_mm[chart.at(column, row)] = 1.0F;
    }
  return chart;
}

// A flank that rises 10 um over 1 mm: plane geometry.
TEST(Visibility, FlankOfARampIsItsSlope) {
  const WallChart chart =
      drawn_wall([](double s, double) { return s < 20 ? 0.0 : std::min(0.01, 0.01 * (s - 20)); });
  EXPECT_NEAR(steepest_along_um_per_mm(chart, 410, 50, 3.0), 10.0, 0.01); // float storage
}

// Groove of a standing 6 mm cutter, depth d: e = s^2/(2 r) - d; at its edge s = sqrt(2 r d) the slope is
// sqrt(2 d/r).
TEST(Visibility, FlankOfAStandingCuttersGrooveIsSqrtTwoDOverR) {
  const WallChart chart =
      drawn_wall([](double s, double) { return std::min(0.0, (s - 20) * (s - 20) / 6.0 - 0.006); });
  const double at_edge = 1e3 * std::sqrt(2.0 * 0.006 / 3.0);
  // Read over four columns (0.2 mm) inside a half groove of 0.19 mm: between the mean and the edge slope.
  EXPECT_LT(steepest_along_um_per_mm(chart, 400, 50, 0.5), at_edge);
  EXPECT_GT(steepest_along_um_per_mm(chart, 400, 50, 0.5), 0.45 * at_edge);
}

TEST(Visibility, SlopeWrapsRoundTheSeam) {
  const WallChart chart = drawn_wall([](double s, double) { return s < 1 ? 0.01 : 0.0; });
  EXPECT_GT(steepest_along_um_per_mm(chart, 0, 50, 0.5), 40.0);
}

TEST(Visibility, StepBetweenLevelsHasItsHeightOverOneRow) {
  const WallChart chart = drawn_wall([](double, double z) { return z < 5 ? 0.004 : 0.0; });
  std::size_t row = 0;
  while (chart.z_mm[row + 1] < 5)
    ++row;
  EXPECT_NEAR(step_slope_um_per_mm(chart, row), 4.0 / (chart.z_mm[1] - chart.z_mm[0]), 0.01);
  EXPECT_EQ(step_slope_um_per_mm(chart, row + 5), 0.0);
}

TEST(Visibility, SaysWhetherTheWantedDepthIsKept) {
  Finding deep, shallow, free;
  FinishWanted wanted;
  add_visibility(free, 3.0, 6.0, wanted);
  EXPECT_EQ(free.size.size(), 1U);
  EXPECT_TRUE(free.cause.empty());
  wanted.witness_depth_um = 4.0;
  add_visibility(deep, 3.0, 6.0, wanted);
  add_visibility(shallow, 3.0, 3.0, wanted);
  EXPECT_NE(deep.cause.find("More than the 4 um wanted"), std::string::npos);
  EXPECT_NE(shallow.cause.find("Within the 4 um wanted"), std::string::npos);
}

} // namespace
} // namespace asperity
