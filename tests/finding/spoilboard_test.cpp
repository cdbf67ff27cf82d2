// Cuts into the spoilboard.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

Scene board_scene(LargeArray<PathPiece> pieces) {
  Scene scene;
  scene.job.cutters = {flat_cutter()};
  scene.job.holding.spoilboard_top_z_mm = -0.5;
  scene.job.holding.spoilboard_cut_allowed_mm = 0.3;
  scene.path.pieces = std::move(pieces);
  return scene;
}

TEST(SpoilboardCut, DepthPlaceAndLinesOfTheDeepestMove) {
  const Scene scene = board_scene({feed_piece(Curve::line({0, 0, 5}, {0, 0, -0.6}), 7),
                                   feed_piece(Curve::line({0, 0, -0.6}, {10, 0, -1.25}), 8),
                                   feed_piece(Curve::line({10, 0, 5}, {20, 0, 5}), 9)});
  const FoundList found = find_spoilboard_cuts(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 0.75, 1e-12);
  EXPECT_EQ(found[0].finding.place_mm, Vec3(10, 0, -1.25));
  EXPECT_EQ(found[0].finding.lines, (std::vector<std::uint32_t>{7, 8}));
  EXPECT_EQ(found[0].finding.weight, Weight::danger) << "0.3 mm is allowed";
}

TEST(SpoilboardCut, WithinWhatIsAllowedItIsANote) {
  const Scene scene = board_scene({feed_piece(Curve::line({0, 0, 5}, {0, 0, -0.8}), 7)});
  EXPECT_EQ(find_spoilboard_cuts(scene.evidence()).at(0).finding.weight, Weight::note) << "exactly 0.3 mm";
}

TEST(SpoilboardCut, AnArcInAnUprightPlaneIsFollowedToItsLowestPoint) {
  Curve arc; // half circle of radius 2 about (0, 0, 1) in the x-z plane, through its lowest point z -1
  arc.centre = {0, 0, 1};
  arc.axis_y = {0, 0, 1};
  arc.radius_mm = 2;
  arc.start_rad = kPi;
  arc.sweep_rad = kPi;
  arc.begin = {-2, 0, 1};
  arc.end = {2, 0, 1};
  const FoundList found = find_spoilboard_cuts(board_scene({feed_piece(arc, 3)}).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 0.5, 1e-4);
}

TEST(SpoilboardCut, AboveTheBoardOrWithoutOneThereIsNone) {
  Scene scene = board_scene({feed_piece(Curve::line({0, 0, 5}, {0, 0, -0.5}), 7)});
  EXPECT_TRUE(find_spoilboard_cuts(scene.evidence()).empty());
  scene.path.pieces[0].curve = Curve::line({0, 0, 5}, {0, 0, -9});
  scene.job.holding.spoilboard_top_z_mm.reset();
  EXPECT_TRUE(find_spoilboard_cuts(scene.evidence()).empty());
}

} // namespace
} // namespace asperity::test
