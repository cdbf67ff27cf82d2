// Cells of a floor cover the box asked for, at the spacing asked for.
#include "asperity/chart/floor_chart.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12; // a few roundings of numbers below 100 mm

TEST(FloorChart, WholeCellsFillTheBoxFromItsCorner) {
  const FloorChart chart = make_floor_chart({-1, 2}, {1, 3}, 0.1, -4.0);
  ASSERT_EQ(chart.nx, 20u);
  ASSERT_EQ(chart.ny, 10u);
  EXPECT_NEAR(chart.x_mm(0), -0.95, kRounding_mm);
  EXPECT_NEAR(chart.y_mm(9), 2.95, kRounding_mm);
  EXPECT_EQ(chart.base_mm, -4.0);
  EXPECT_EQ(chart.at(3, 2), 43u);
}

TEST(FloorChart, ABrokenLastCellSticksOutEquallyOnBothSides) {
  const FloorChart chart = make_floor_chart({0, 0}, {1.0, 1.0}, 0.3, 0.0);
  ASSERT_EQ(chart.nx, 4u);
  EXPECT_NEAR(chart.x_mm(0) - 0.15, -0.1, kRounding_mm);
  EXPECT_NEAR(chart.x_mm(3) + 0.15, 1.1, kRounding_mm);
}

TEST(FloorChart, IsTheSameMadeByAnyNumberOfThreads) {
  const FloorChart one = make_floor_chart({0, 0}, {40, 30}, 0.1, 1.0);
  for (const int threads : {0, 2, 5}) {
    const FloorChart many = make_floor_chart({0, 0}, {40, 30}, 0.1, 1.0, threads);
    EXPECT_EQ(many.wanted_mm, one.wanted_mm);
    EXPECT_EQ(many.envelope_mm, one.envelope_mm);
    EXPECT_EQ(many.blank_mm, one.blank_mm);
    EXPECT_EQ(many.owner, one.owner);
  }
}

TEST(FloorChart, BeginsUncutWantedLevelWithoutABlankLimit) {
  FloorChart chart = make_floor_chart({0, 0}, {0.2, 0.1}, 0.1, 0.0);
  ASSERT_EQ(chart.wanted_mm.size(), 2u);
  EXPECT_TRUE(chart.in_feature(0));
  EXPECT_EQ(chart.owner[1], kNobody);
  EXPECT_FALSE(chart.is_cut(1));
  EXPECT_EQ(chart.residual_mm(1), std::numeric_limits<float>::infinity());
  chart.wanted_mm[0] = NAN;
  EXPECT_FALSE(chart.in_feature(0));
}

} // namespace
} // namespace asperity
