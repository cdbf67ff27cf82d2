// What can be drawn: kinds of path, the cutter's place in time, where a wall is cut open.
#include "asperity/render/scene.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {

namespace {

PathPiece piece(Vec3 begin, Vec3 end, MoveKind kind = MoveKind::feed) {
  PathPiece p;
  p.curve = Curve::line(begin, end);
  p.length_mm = glm::length(end - begin);
  p.kind = kind;
  return p;
}

} // namespace

TEST(PathKind, FortyFiveDegreesPartRampFromPlunge) {
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {0, 0, 0})), PathKind::plunge);
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {4.9, 0, 0})), PathKind::plunge);
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {5.1, 0, 0})), PathKind::ramp);
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {40, 0, 4.9})), PathKind::ramp);
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {40, 0, 5})), PathKind::feed);
  EXPECT_EQ(kind_of(piece({0, 0, 0}, {0, 0, 5})), PathKind::feed);
  EXPECT_EQ(kind_of(piece({0, 0, 5}, {0, 0, 0}, MoveKind::rapid)), PathKind::rapid);
}

TEST(PathKind, AHelixThatEndsAboveItsStartIsARamp) {
  PathPiece helix;
  helix.curve = Curve::plan_arc({10, 0, 2}, {10, 0, 0}, {0, 0}, 2.0 * 3.14159265358979);
  helix.length_mm = helix.curve.length_mm();
  helix.kind = MoveKind::feed;
  EXPECT_EQ(kind_of(helix), PathKind::ramp);
}

TEST(TipAt, FollowsSteadyAccelerationToTheSquareOfTime) {
  // derived: from rest, d = a t^2 / 2, then steadily on, then the same way to rest.
  PathPiece p = piece({0, 0, 0}, {10, 0, 0});
  p.acceleration_mm_per_s2 = 2.0;
  p.v_peak_mm_per_s = 2.0; // reached after 1 s and 1 mm; cruise 8 mm in 4 s
  p.start_s = 5.0;
  p.duration_s = 6.0;
  TimedPath path;
  path.pieces = {p};
  constexpr double kHalving_mm = 1e-6; // places are sought to 1e-7 mm
  EXPECT_NEAR(tip_at(path, 5.5)->tip_mm.x, 0.25, kHalving_mm);
  EXPECT_NEAR(tip_at(path, 6.0)->tip_mm.x, 1.0, kHalving_mm);
  EXPECT_NEAR(tip_at(path, 8.0)->tip_mm.x, 5.0, kHalving_mm);
  EXPECT_NEAR(tip_at(path, 10.5)->tip_mm.x, 9.75, kHalving_mm);
  EXPECT_NEAR(tip_at(path, 0.0)->tip_mm.x, 0.0, kHalving_mm);
  EXPECT_NEAR(tip_at(path, 99.0)->tip_mm.x, 10.0, kHalving_mm);
  EXPECT_FALSE(tip_at(TimedPath{}, 0.0));
}

TEST(Seam, LiesOppositeToTheOnlyFindingOfTheWall) {
  Outcome outcome = test_support::rim_outcome();
  std::erase_if(outcome.findings, [](const Finding &f) { return f.kind != FindingKind::witness_line; });
  const double length = std::get<WallChart>(outcome.charts[0]).outline.length_mm();
  constexpr double kColumn_mm = 0.2; // the finding is taken to its nearest column
  EXPECT_NEAR(seam_mm(outcome, 0), 0.5 * length, kColumn_mm);
  // The witness at s = 0 then lies in the middle of the strip.
  EXPECT_NEAR(strip_place_mm(outcome, 0, {31.0, 0.0, 7.0}).x, 0.5 * length, kColumn_mm);
}

TEST(Bounds, OfTheRimAreItsDiameterAndHeight) {
  const Bounds bounds = surface_bounds(test_support::rim_outcome(0.2));
  constexpr double kHalfCell_mm = 0.1; // rows stand at the middle of their cells
  EXPECT_NEAR(bounds.high.x - bounds.low.x, 62.0, 1e-3);
  EXPECT_NEAR(bounds.low.z, 0.0, kHalfCell_mm + 1e-3);
  EXPECT_NEAR(bounds.high.z, 14.0, kHalfCell_mm + 1e-3);
}

} // namespace asperity
