// Columns close round the outline, rows fill the height, normals leave the material.
#include "asperity/chart/wall_chart.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

TEST(WallChart, IsTheSameMadeByAnyNumberOfThreads) {
  const Outline disc = Outline::circle({0, 0}, 40.0);
  const WallChart one = make_wall_chart(disc, false, 0.0, 20.0, 0.1);
  for (const int threads : {0, 2, 5}) {
    const WallChart many = make_wall_chart(disc, false, 0.0, 20.0, 0.1, threads);
    EXPECT_EQ(many.envelope_mm, one.envelope_mm);
    EXPECT_EQ(many.blank_mm, one.blank_mm);
    EXPECT_EQ(many.owner, one.owner);
  }
}

constexpr double kRounding_mm = 1e-12; // a few roundings of numbers below 100 mm

TEST(WallChart, SpacingIsRoundedDownToCloseRoundTheOutline) {
  const Outline bore = Outline::circle({0, 0}, 26.0);
  const WallChart chart = make_wall_chart(bore, true, -15.0, 0.0, 0.4);
  // Smallest whole number of cells no wider than 0.4 mm: ceil(26 pi / 0.4) = 205, ceil(15 / 0.4) = 38.
  ASSERT_EQ(chart.columns(), 205u);
  ASSERT_EQ(chart.rows(), 38u);
  const double step = 26.0 * kPi / 205.0;
  EXPECT_NEAR(chart.s_mm.front(), 0.5 * step, kRounding_mm);
  EXPECT_NEAR(chart.s_mm.front() + bore.length_mm() - chart.s_mm.back(), step, kRounding_mm);
  EXPECT_NEAR(chart.z_mm.front() + 15.0, 0.5 * 15.0 / 38.0, kRounding_mm);
  EXPECT_NEAR(-chart.z_mm.back(), 0.5 * 15.0 / 38.0, kRounding_mm);
}

TEST(WallChart, AHeightOfWholeCellsGetsNoExtraRow) {
  EXPECT_EQ(make_wall_chart(Outline::circle({0, 0}, 10.0), false, 0.0, 0.3, 0.1).rows(),
            3u); // 0.3 / 0.1 < 3 + ulp
}

TEST(WallChart, NormalsLeaveTheMaterialOutsideAndInside) {
  const Outline ring = Outline::circle({3, -2}, 20.0);
  for (const bool inside : {false, true}) {
    const WallChart chart = make_wall_chart(ring, inside, 0.0, 1.0, 1.0);
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const Vec2 outward = (chart.foot[i] - Vec2(3, -2)) / 10.0;
      EXPECT_NEAR(glm::distance(chart.normal[i], inside ? -outward : outward), 0.0, kRounding_mm);
    }
  }
}

TEST(WallChart, BeginsUncutWithoutABlankLimit) {
  const WallChart chart = make_wall_chart(Outline::circle({0, 0}, 5.0), false, {0.5, 1.0}, {0.0, 0.1, 0.2});
  ASSERT_EQ(chart.envelope_mm.size(), 6u);
  ASSERT_EQ(chart.blank_mm.size(), 6u);
  for (std::size_t cell = 0; cell < 6; ++cell) {
    EXPECT_EQ(chart.owner[cell], kNobody);
    EXPECT_FALSE(chart.is_cut(cell));
    EXPECT_EQ(chart.residual_mm(cell), std::numeric_limits<float>::infinity());
  }
  EXPECT_EQ(chart.at(1, 2), 5u);
}

TEST(WallChart, TheLowerOfEnvelopeAndBlankRemains) {
  WallChart chart = make_wall_chart(Outline::circle({0, 0}, 5.0), false, {0.5}, {0.0});
  chart.blank_mm[0] = 0.5f;
  EXPECT_EQ(chart.residual_mm(0), 0.5f);
  chart.envelope_mm[0] = -0.01f;
  EXPECT_EQ(chart.residual_mm(0), -0.01f);
  EXPECT_TRUE(chart.is_cut(0));
}

} // namespace
} // namespace asperity
