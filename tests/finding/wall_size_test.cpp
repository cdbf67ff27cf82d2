// Widths of rounded rectangles and offsets of free outlines against formulas.
#include "rim_scene.h"

#include "asperity/finding/measure.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr double kFloat_mm = 1e-8; ///< envelopes are floats

WallFeature bush_block() {
  WallFeature wall;
  wall.name = "bush block";
  wall.kind = OutlineKind::rounded_rectangle;
  wall.centre = {5, -3};
  wall.width_mm = {40, 24};
  wall.outline = Outline::rounded_rectangle(wall.centre, 40, 24, 4);
  wall.z_top_mm = 5;
  return wall;
}

/// e by the side of the block a foot lies on.
WallChart block_chart(const WallFeature &wall, double right, double left, double back, double front,
                      double corner) {
  WallChart chart = drawn_chart(wall, 0.2, [](double, double) { return 0.0; });
  for (std::size_t i = 0; i < chart.columns(); ++i) {
    const Vec2 n = wall.side == Side::inside ? -chart.normal[i] : chart.normal[i];
    const double e = n.x > 0.999999    ? right
                     : n.x < -0.999999 ? left
                     : n.y > 0.999999  ? back
                     : n.y < -0.999999 ? front
                                       : corner;
    for (std::size_t j = 0; j < chart.rows(); ++j)
      chart.envelope_mm[chart.at(i, j)] = static_cast<float>(e);
  }
  return chart;
}

TEST(WallSize, WidthsAddTheErrorsOfOppositeFlats) {
  const WallFeature wall = bush_block();
  const auto sizes = measure_wall(wall, block_chart(wall, 0.01, 0.02, -0.03, 0.005, 0.04));
  ASSERT_EQ(sizes.size(), 2u);
  EXPECT_EQ(sizes[0].what, "width along x");
  EXPECT_NEAR(sizes[0].mean_mm, 40.03, kFloat_mm);
  EXPECT_EQ(sizes[1].what, "width along y");
  EXPECT_NEAR(sizes[1].mean_mm, 23.975, kFloat_mm);
}

TEST(WallSize, APocketShrinksByWhatIsLeft) {
  WallFeature pocket = bush_block();
  pocket.side = Side::inside;
  pocket.size[0] = SizeWanted{40, 39.98, 40.02};
  const auto sizes = measure_wall(pocket, block_chart(pocket, 0.01, 0.02, 0, 0, 0.3));
  EXPECT_NEAR(sizes[0].mean_mm, 39.97, kFloat_mm);
  EXPECT_EQ(sizes[0].verdict, Verdict::too_small);
  EXPECT_EQ(sizes[1].verdict, Verdict::not_asked);
}

TEST(WallSize, AFreeOutlineIsJudgedByItsSingleCells) {
  WallFeature wall = bush_block();
  wall.kind = OutlineKind::free_form;
  wall.size[0] = SizeWanted{0, -0.02, 0.02};
  const auto sizes = measure_wall(wall, block_chart(wall, 0.01, 0.01, 0.01, 0.01, 0.03));
  ASSERT_EQ(sizes.size(), 1u);
  EXPECT_EQ(sizes[0].what, "offset");
  EXPECT_NEAR(sizes[0].smallest_mm, 0.01, kFloat_mm);
  EXPECT_NEAR(sizes[0].largest_mm, 0.03, kFloat_mm);
  EXPECT_GT(sizes[0].mean_mm, 0.01);
  EXPECT_LT(sizes[0].mean_mm, 0.03);
  EXPECT_EQ(sizes[0].verdict, Verdict::too_large);
}

} // namespace
} // namespace asperity::test
