// Cutter and shank against bolts and clamps of known place.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// The finder resolves 1 um, or a hundredth of the depth.
double tolerance(double depth) { return 0.001 + 0.01 * depth; }

/// Bolt of diameter 12 at (50, 0), top at z 8; cutter of radius 3 unless changed.
Scene bolt_scene(const Curve &curve, MoveKind kind = MoveKind::feed) {
  Scene scene;
  scene.job.cutters = {flat_cutter()};
  scene.job.holding.keep_outs = {{"hub bolt", true, {50, 0}, 12, {}, 8}};
  scene.path.pieces = {feed_piece(curve, 60)};
  scene.path.pieces[0].kind = kind;
  return scene;
}

TEST(KeepOut, AStraightMovePastABoltIsJudgedByItsNearestPoint) {
  // The axis passes 8.9 mm from the bolt's centre: radii 6 + 3 overlap by 0.1.
  const FoundList found =
      find_keep_outs_touched(bolt_scene(Curve::line({0, 8.9, 2}, {100, 8.9, 2})).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 0.1, tolerance(0.1));
  EXPECT_EQ(found[0].finding.weight, Weight::danger);
  EXPECT_EQ(found[0].finding.lines, std::vector<std::uint32_t>{60});
  EXPECT_NEAR(found[0].finding.place_mm.x, 50.0, 0.5);
  EXPECT_TRUE(
      find_keep_outs_touched(bolt_scene(Curve::line({0, 9.01, 2}, {100, 9.01, 2})).evidence()).empty());
}

TEST(KeepOut, TravelAboveTheTopIsFree) {
  EXPECT_TRUE(
      find_keep_outs_touched(bolt_scene(Curve::line({0, 0, 8.01}, {100, 0, 8.01})).evidence()).empty());
  EXPECT_FALSE(
      find_keep_outs_touched(bolt_scene(Curve::line({0, 0, 7.99}, {100, 0, 7.99})).evidence()).empty());
}

TEST(KeepOut, ASlopingMoveTouchesOnlyWhereItIsLow) {
  // Falls from z 20 at x 0 to z 0 at x 100: over the bolt (x 41..59) it is at 11.8 to 8.2, above the top.
  EXPECT_TRUE(find_keep_outs_touched(bolt_scene(Curve::line({0, 0, 20}, {100, 0, 0})).evidence()).empty());
  // From z 18 it passes 8 at x 55.6, still over the bolt.
  EXPECT_EQ(find_keep_outs_touched(bolt_scene(Curve::line({0, 0, 18}, {100, 0, 0})).evidence()).size(), 1u);
}

TEST(KeepOut, AThickShankTouchesWhereTheEdgeDoesNot) {
  Scene scene = bolt_scene(Curve::line({0, 9.5, 2}, {100, 9.5, 2}));
  scene.job.cutters[0].flute_length_mm = 4;
  scene.job.cutters[0].shank_diameter_mm = 8;
  const FoundList found = find_keep_outs_touched(scene.evidence());
  ASSERT_EQ(found.size(), 1u) << "the shank begins at z 6, below the bolt's top";
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 0.5, tolerance(0.5));
  scene.job.cutters[0].flute_length_mm = 7;
  EXPECT_TRUE(find_keep_outs_touched(scene.evidence()).empty()) << "the shank begins at z 9";
}

TEST(KeepOut, ABallIsOnlyAsWideAsAtTheTopOfTheBolt) {
  // 0.5 above its tip a ball of radius 3 has radius sqrt(9 - 2.5^2) = 1.658.
  Scene scene = bolt_scene(Curve::line({0, 7.7, 7.5}, {100, 7.7, 7.5}));
  scene.job.cutters[0].kind = CutterKind::ball;
  EXPECT_TRUE(find_keep_outs_touched(scene.evidence()).empty());
  scene.path.pieces[0].curve = Curve::line({0, 7.6, 7.5}, {100, 7.6, 7.5});
  const FoundList found = find_keep_outs_touched(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 6 + std::sqrt(9 - 6.25) - 7.6, tolerance(0.1));
}

TEST(KeepOut, ABoxIsTouchedAtItsCornerOnlyWithinTheRadius) {
  Scene scene = bolt_scene(Curve::line({0, 0, 0}, {0, 0, 0}));
  scene.job.holding.keep_outs = {{"clamp", false, {50, 0}, 0, {20, 10}, 8}};
  // Corner at (60, 5). The axis stands 2.9 or 3.1 mm from it on the diagonal.
  const auto stand = [&](double distance) {
    const double d = distance / std::sqrt(2.0);
    scene.path.pieces[0].curve = Curve::line({60 + d, 5 + d, 20}, {60 + d, 5 + d, 1});
    return find_keep_outs_touched(scene.evidence());
  };
  EXPECT_TRUE(stand(3.1).empty());
  ASSERT_EQ(stand(2.9).size(), 1u);
  EXPECT_NEAR(quantity(stand(2.9)[0].finding, "depth"), 0.1, tolerance(0.1));
}

TEST(KeepOut, ARapidAndAnArcRoundTheBoltAreNamed) {
  const Vec3 begin(58, 0, 2);
  const FoundList found = find_keep_outs_touched(
      bolt_scene(Curve::plan_arc(begin, begin, {50, 0}, 2 * kPi), MoveKind::rapid).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 1.0, tolerance(1.0));
  EXPECT_NE(found[0].finding.cause.find("rapid"), std::string::npos) << found[0].finding.cause;
  EXPECT_NE(found[0].finding.cause.find("hub bolt"), std::string::npos) << found[0].finding.cause;
}

} // namespace
} // namespace asperity::test
