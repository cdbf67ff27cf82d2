// The feature cut through: it goes through what is pointed at.
#include "place.h"
#include "requests.h"
#include "small_outcome.h"

using namespace asperity;
using namespace asperity::test_support;

TEST(Section, TheCutOfAWallIsItsArcLengthAndThatOfAFloorItsY) {
  const Outcome &outcome = *bush_result()->outcome;
  const auto &wall = std::get<WallChart>(outcome.charts[0]);
  const std::size_t column = wall.columns() / 3;
  // Columns stand 0.1 mm apart.
  EXPECT_NEAR(cut_place_mm(outcome, 0, {wall.foot[column], 1.0}), wall.s_mm[column], 0.06);
  EXPECT_DOUBLE_EQ(cut_place_mm(outcome, 1, {2.0, 3.5, 4.0}), 3.5);
  EXPECT_DOUBLE_EQ(cut_range(outcome, 0).high_mm, wall.outline.length_mm());
}

TEST(Section, StaysWithinTheFeature) {
  AppState state = state_with_bush();
  apply(state, SetSection{1e9});
  EXPECT_DOUBLE_EQ(state.section.at_mm, cut_range(*state.outcome(0), 0).high_mm);
  apply(state, SetSection{-3});
  EXPECT_DOUBLE_EQ(state.section.at_mm, 0.0);
}

TEST(Section, GoesThroughAPickedPlace) {
  AppState state = state_with_bush();
  const auto &wall = std::get<WallChart>(state.outcome(0)->charts[0]);
  const std::size_t column = wall.columns() / 4;
  Pick pick{.what = Pick::What::surface, .feature = 0, .column = column};
  pick.point_mm = {wall.foot[column], wall.z_mm[3]};
  apply(state, Picked{0, pick});
  EXPECT_NEAR(state.section.at_mm, wall.s_mm[column], 0.06);
  const DrawRequest request = section_request(state, 0, {300, 200});
  EXPECT_EQ(request.view, View::section);
  EXPECT_DOUBLE_EQ(request.section_at_mm, state.section.at_mm);
}
