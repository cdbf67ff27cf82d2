// Gouges against drawn charts and the limits of the job.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// Wall with a scar at s 60..62, z 5..7 of the given depth.
Scene scarred(const WallFeature &wall, double depth) {
  Scene scene = wall_scene(
      wall, 0.1, [=](double s, double z) { return s > 60 && s < 62 && z > 5 && z < 7 ? -depth : 0.0; });
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 0}, {1, 0, 0}), 44)};
  scene.wall().owner.assign(scene.wall().owner.size(), 0);
  return scene;
}

TEST(Gouge, AScarIsFoundWithDepthPlaceAndLine) {
  const FoundList found = find_gouges(scarred(rim_wall(), 0.3).evidence());
  ASSERT_EQ(found.size(), 1u);
  const Finding &gouge = found[0].finding;
  EXPECT_NEAR(quantity(gouge, "depth"), 0.3, 1e-7);
  EXPECT_EQ(gouge.lines, std::vector<std::uint32_t>{44});
  EXPECT_EQ(gouge.weight, Weight::flaw);
  EXPECT_NE(gouge.where.find("z 5.00 to 7.00 mm"), std::string::npos) << gouge.where;
  EXPECT_NE(gouge.cause.find("line 44"), std::string::npos) << gouge.cause;
  EXPECT_GT(gouge.place_mm.z, 5.0);
  EXPECT_LT(gouge.place_mm.z, 7.0);
}

TEST(Gouge, WithoutLimitsAFewHundredthsAreLeftUnsaid) {
  EXPECT_TRUE(find_gouges(scarred(rim_wall(), 0.049).evidence()).empty());
  EXPECT_EQ(find_gouges(scarred(rim_wall(), 0.051).evidence()).size(), 1u);
}

// 61.96 on diameter leaves 0.02 a side; a bore of at most 62.1 leaves 0.05.
TEST(Gouge, TheLimitIsHalfTheSizeLimit) {
  WallFeature wall = rim_wall();
  wall.size[0] = SizeWanted{62, 61.96, 62.1};
  EXPECT_TRUE(find_gouges(scarred(wall, 0.0199).evidence()).empty());
  EXPECT_EQ(find_gouges(scarred(wall, 0.0201).evidence()).size(), 1u);
  wall.side = Side::inside;
  EXPECT_TRUE(find_gouges(scarred(wall, 0.0499).evidence()).empty());
  EXPECT_EQ(find_gouges(scarred(wall, 0.0501).evidence()).size(), 1u);
}

TEST(Gouge, AWholeWallTooDeepIsCalledAShift) {
  const FoundList found =
      find_gouges(wall_scene(rim_wall(), 0.1, [](double, double) { return -0.08; }).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].finding.cause.find("shift"), std::string::npos) << found[0].finding.cause;
  EXPECT_NE(found[0].finding.where.find("all round"), std::string::npos) << found[0].finding.where;
}

TEST(Gouge, SkinBelowTheWantedSurfaceIsNoGouge) {
  Scene scene = wall_scene(rim_wall(), 0.1, [](double, double) { return -0.1; });
  scene.wall().blank_mm.assign(scene.wall().blank_mm.size(), -0.3f);
  EXPECT_TRUE(find_gouges(scene.evidence()).empty());
}

TEST(Gouge, AFloorIsJudgedByItsHeight) {
  Scene scene;
  FloorFeature floor;
  floor.z_mm = 3;
  floor.height = SizeWanted{3, 2.9, 3.1};
  scene.job.features = {floor};
  scene.charts = {make_floor_chart({0, 0}, {10, 10}, 0.5, 3)};
  scene.floor().blank_mm.assign(scene.floor().blank_mm.size(), 1.0f);
  scene.floor().envelope_mm.assign(scene.floor().envelope_mm.size(), 0.0f);
  scene.floor().envelope_mm[scene.floor().at(4, 6)] = -0.2f;
  const FoundList found = find_gouges(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 0.2, 1e-7);
  EXPECT_NEAR(found[0].finding.place_mm.x, scene.floor().x_mm(4), 1e-12);
  EXPECT_NEAR(found[0].finding.place_mm.y, scene.floor().y_mm(6), 1e-12);
  scene.floor().envelope_mm[scene.floor().at(4, 6)] = -0.09f;
  EXPECT_TRUE(find_gouges(scene.evidence()).empty());
}

} // namespace
} // namespace asperity::test
