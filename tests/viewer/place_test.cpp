// Places on the flat sheet and in space belong together.
#include "place.h"
#include "small_outcome.h"

#include "asperity/render/cell_quantity.h"
#include "asperity/render/scene.h"

using namespace asperity;
using namespace asperity::test_support;

namespace {

/// strip_place_mm knows the wall by its columns, which stand 0.1 mm apart.
constexpr double kHalfColumn_mm = 0.06;

} // namespace

TEST(Place, ThePointOfASheetPlaceLiesThereOnTheSheet) {
  const Outcome &outcome = *bush_result()->outcome;
  for (const Vec2 place : {Vec2(0.5, 1.0), Vec2(20.0, 0.2), Vec2(44.4, 3.8), Vec2(62.0, 2.0)}) {
    const Vec3 point = point_of_sheet(outcome, 0, place);
    EXPECT_NEAR(glm::length(plan(point)), 10.0, 1e-9) << "on the disc of 20 mm";
    const Vec2 back = strip_place_mm(outcome, 0, point);
    EXPECT_NEAR(back.x, place.x, kHalfColumn_mm);
    EXPECT_NEAR(back.y, place.y, 1e-12);
  }
}

TEST(Place, ADragAcrossAsksForATraceRoundTheWallBetweenItsEnds) {
  const Outcome &outcome = *bush_result()->outcome;
  const TraceRequest request = request_between(outcome, 0, {20, 1.9}, {12, 2.1});
  EXPECT_EQ(request.along, "s");
  EXPECT_DOUBLE_EQ(*request.length_mm, 8.0);
  EXPECT_DOUBLE_EQ(request.at_mm, 2.0);
  const auto &wall = std::get<WallChart>(outcome.charts[0]);
  const Vec2 begin = wall.outline.point(request.from_mm);
  EXPECT_NEAR(glm::length(begin - plan(point_of_sheet(outcome, 0, {12, 2}))), 0.0, 1e-9);
}

TEST(Place, ADragUpwardsAsksForATraceUpTheWall) {
  const TraceRequest request = request_between(*bush_result()->outcome, 0, {20, 0.5}, {20.1, 3.5});
  EXPECT_EQ(request.along, "z");
  EXPECT_DOUBLE_EQ(request.from_mm, 0.5);
  EXPECT_DOUBLE_EQ(*request.length_mm, 3.0);
}

TEST(Place, ADragOnAFloorAsksAlongXOrY) {
  EXPECT_EQ(request_between(*bush_result()->outcome, 1, {-5, 1}, {5, 1}).along, "x");
  const TraceRequest up = request_between(*bush_result()->outcome, 1, {2, -5}, {2, 5});
  EXPECT_EQ(up.along, "y");
  EXPECT_DOUBLE_EQ(up.at_mm, 2.0);
}

TEST(Place, TheEyeOfAFindingStandsInFrontOfItsWall) {
  Outcome outcome = *bush_result()->outcome;
  Finding finding;
  finding.feature = 0;
  finding.place_mm = {0, 10, 2};
  outcome.findings = {finding};
  const Camera camera = camera_at_finding(outcome, 0, {});
  EXPECT_NEAR(camera.azimuth_rad, rad_from_deg(90), rad_from_deg(1)) << "a column is 0.6 degrees wide";
  EXPECT_GT(camera.elevation_rad, 0.0);
  EXPECT_DOUBLE_EQ(camera.target_mm.y, 10.0);
}

TEST(Place, ChartsMatchOnlyWithTheSameCells) {
  const Outcome &a = *bush_result()->outcome, &b = *bush_with_large_cutter()->outcome;
  EXPECT_TRUE(charts_match(a, b, 0));
  EXPECT_TRUE(charts_match(a, b, 1));
  EXPECT_FALSE(charts_match(a, b, 2)) << "there are two";
  Outcome other = b;
  std::swap(other.charts[0], other.charts[1]);
  EXPECT_FALSE(charts_match(a, other, 0));
}
