// Stock outside walls against closed forms: circles off centre, rectangles, holes, and nothing there.
#include "asperity/base/units.h"
#include "asperity/job/blank.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding = 1e-11;
constexpr double kBisected = 2e-9; // roots are bisected to 1e-9
constexpr double kReach_mm = 6;

Blank cylinder(double diameter_mm) {
  Blank blank;
  blank.diameter_mm = diameter_mm;
  blank.z_top_mm = 12;
  return blank;
}

Blank grown(const Outline &outline, double allowance_mm) {
  Blank blank;
  blank.shape = BlankShape::grown;
  blank.grown_from = outline;
  blank.allowance_mm = allowance_mm;
  blank.z_top_mm = 12;
  return blank;
}

Vec2 direction(double angle_rad) { return {std::cos(angle_rad), std::sin(angle_rad)}; }

TEST(WallStock, EccentricRoundBlankFollowsTheLawOfCosines) {
  // derived: |p + t n - c| = R with p = r n, c = (e, 0): t = e cos a + sqrt(R^2 - e^2 sin^2 a) - r.
  constexpr double kWall = 31.0, kBlank = 31.6, kOff = 0.9;
  Blank exact = cylinder(2 * kBlank);
  exact.centre = {kOff, 0};
  const Blank marched = grown(Outline::circle({kOff, 0}, 2 * (kBlank - 0.5)), 0.5);
  for (int i = 0; i < 36; ++i) {
    const double a = rad_from_deg(10.0 * i);
    const double stock =
        kOff * std::cos(a) + std::sqrt(kBlank * kBlank - std::pow(kOff * std::sin(a), 2)) - kWall;
    EXPECT_NEAR(exact.wall_stock_mm(kWall * direction(a), direction(a), 6, kReach_mm), stock, kRounding) << i;
    EXPECT_NEAR(marched.wall_stock_mm(kWall * direction(a), direction(a), 6, kReach_mm), stock, kBisected)
        << i;
  }
}

TEST(WallStock, ObliqueRayLeavesARectangleThroughTheNearerSide) {
  Blank blank;
  blank.shape = BlankShape::box;
  blank.size_mm = {40, 20};
  blank.z_top_mm = 12;
  // From (18, 8) at 30 degrees: x side after 2/cos 30, y side after 2/sin 30.
  EXPECT_NEAR(blank.wall_stock_mm({18, 8}, direction(kPi / 6), 6, kReach_mm), 2 / std::cos(kPi / 6),
              kRounding);
  EXPECT_NEAR(blank.wall_stock_mm({18, 8}, direction(kPi / 3), 6, kReach_mm), 2 / std::sin(kPi / 3),
              kRounding);
  // Sharp corners stay sharp when marched round the same rectangle as an outline.
  const Blank marched = grown(Outline::rounded_rectangle({0, 0}, 40, 20, 0), 0);
  EXPECT_NEAR(marched.wall_stock_mm({18, 8}, direction(kPi / 6), 6, kReach_mm), 2 / std::cos(kPi / 6),
              kBisected);
}

TEST(WallStock, BlankTooSmallIsNegative) {
  EXPECT_NEAR(cylinder(61.0).wall_stock_mm({31, 0}, {1, 0}, 6, kReach_mm), -0.5, kRounding);
  EXPECT_NEAR(grown(Outline::circle({0, 0}, 61), 0).wall_stock_mm({31, 0}, {1, 0}, 6, kReach_mm), -0.5,
              kBisected);
}

TEST(WallStock, BlankExactlyOnTheWallIsNoStock) {
  for (int i = 0; i < 24; ++i) {
    const Vec2 n = direction(0.37 + i);
    EXPECT_NEAR(cylinder(62).wall_stock_mm(31.0 * n, n, 6, kReach_mm), 0.0, kRounding) << i;
    EXPECT_NEAR(grown(Outline::circle({0, 0}, 62), 0).wall_stock_mm(31.0 * n, n, 6, kReach_mm), 0.0,
                kBisected)
        << i;
  }
}

TEST(WallStock, NothingBehindTheWallIsMinusReach) {
  EXPECT_EQ(cylinder(40).wall_stock_mm({31, 0}, {1, 0}, 6, kReach_mm), -kReach_mm);
  EXPECT_EQ(cylinder(62).wall_stock_mm({31, 0}, {1, 0}, 13, kReach_mm), -kReach_mm);
}

TEST(WallStock, MoreThanReachIsReach) {
  EXPECT_EQ(cylinder(100).wall_stock_mm({31, 0}, {1, 0}, 6, kReach_mm), kReach_mm);
}

TEST(WallStock, InsideWallLooksIntoTheHole) {
  // Wall of diameter 10, normal towards the axis.
  Blank blank = cylinder(60);
  EXPECT_EQ(blank.wall_stock_mm({5, 0}, {-1, 0}, 6, kReach_mm), kReach_mm); // nothing pre-made: solid
  blank.rounds = {{{0, 0}, 9, 0, 12, true}};
  EXPECT_NEAR(blank.wall_stock_mm({5, 0}, {-1, 0}, 6, kReach_mm), 0.5, kRounding);
  blank.rounds = {{{0, 0}, 11, 0, 12, true}};
  EXPECT_NEAR(blank.wall_stock_mm({5, 0}, {-1, 0}, 6, kReach_mm), -0.5, kRounding);
  // A reach across the whole hole still ends at the near edge, not at the far wall.
  blank.rounds = {{{0, 0}, 9, 0, 12, true}};
  EXPECT_NEAR(blank.wall_stock_mm({5, 0}, {-1, 0}, 6, 25), 0.5, kRounding);
}

TEST(WallStock, BlindHoleCountsOnlyAtItsHeights) {
  Blank blank = cylinder(60);
  blank.rounds = {{{0, 0}, 9, 4, 12, true}};
  EXPECT_NEAR(blank.wall_stock_mm({5, 0}, {-1, 0}, 8, kReach_mm), 0.5, kRounding);
  EXPECT_EQ(blank.wall_stock_mm({5, 0}, {-1, 0}, 2, kReach_mm), kReach_mm);
}

TEST(WallStock, HoleBehindTheWallDoesNotHideTheSkinBeforeIt) {
  Blank blank = cylinder(60);
  blank.rounds = {{{26, 0}, 4, 0, 12, true}}; // hole from 24 to 28, wall at 29, blank to 30
  EXPECT_NEAR(blank.wall_stock_mm({29, 0}, {1, 0}, 6, kReach_mm), 1.0, kRounding);
  // Wall point in the middle of that hole: the material behind it ends at 24.
  EXPECT_NEAR(blank.wall_stock_mm({26, 0}, {1, 0}, 6, kReach_mm), -2.0, kRounding);
}

TEST(WallStock, IsTheSameWhereSlicesAre) {
  // By what has_same_slice says, at heights below, in and above a foot and features that end halfway.
  Blank blank = cylinder(60);
  blank.elephant_foot_mm = 0.3, blank.elephant_foot_height_mm = 2;
  blank.rounds = {{{26, 0}, 4, 5, 12, true}, {{0, 30}, 4, 0, 7, false}};
  int same = 0, other = 0;
  for (double z = 0.25; z < 12; z += 0.5)
    for (double above = z + 0.5; above < 12; above += 0.5) {
      if (!blank.has_same_slice(z, above)) {
        ++other;
        continue;
      }
      ++same;
      for (int i = 0; i < 24; ++i) {
        const Vec2 n = direction(rad_from_deg(15.0 * i)), p = 29.0 * n;
        EXPECT_EQ(blank.wall_stock_mm(p, n, z, kReach_mm), blank.wall_stock_mm(p, n, above, kReach_mm)) << z;
        EXPECT_EQ(blank.plan_depth_mm(p, z), blank.plan_depth_mm(p, above)) << z;
      }
    }
  EXPECT_GT(same, 20);
  EXPECT_GT(other, 100);
}

TEST(WallStock, BlankFloatingInFrontDoesNotCoverTheWall) {
  Blank blank = cylinder(10);
  blank.centre = {35, 0}; // from 30 to 40
  EXPECT_EQ(blank.wall_stock_mm({29, 0}, {1, 0}, 6, 4), -4);
}

TEST(WallStock, BossJoinsTheBlankItStandsAgainst) {
  Blank blank = cylinder(60);
  blank.rounds = {{{30, 0}, 4, 0, 12, false}};
  EXPECT_NEAR(blank.wall_stock_mm({29, 0}, {1, 0}, 6, kReach_mm), 3.0, kRounding);
  EXPECT_NEAR(blank.wall_stock_mm({0, 29}, {0, 1}, 6, kReach_mm), 1.0, kRounding);
}

} // namespace
} // namespace asperity
