// Depth and height of blanks against closed forms.
#include "asperity/job/blank.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding = 1e-12; // a handful of operations on numbers below 100

Blank cylinder(double diameter_mm, double height_mm) {
  Blank blank;
  blank.diameter_mm = diameter_mm;
  blank.z_top_mm = height_mm;
  return blank;
}

Blank box(Vec2 size_mm, double height_mm) {
  Blank blank;
  blank.shape = BlankShape::box;
  blank.size_mm = size_mm;
  blank.z_top_mm = height_mm;
  return blank;
}

/// Cone frustum of radius 20 at z = 0 and 10 at z = 8, then a cylinder to z = 12.
Blank frustum() {
  Blank blank;
  blank.shape = BlankShape::revolved;
  blank.profile_mm = {{20, 0}, {10, 8}, {10, 12}};
  blank.z_top_mm = 12;
  return blank;
}

Mesh box_mesh(Vec3 low, Vec3 high) {
  const auto corner = [&](int i) {
    return Vec3(i & 1 ? high.x : low.x, i & 2 ? high.y : low.y, i & 4 ? high.z : low.z);
  };
  constexpr int kFaces[12][3] = {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
                                 {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
  Mesh mesh;
  for (const auto &face : kFaces)
    mesh.triangles.push_back({corner(face[0]), corner(face[1]), corner(face[2])});
  mesh.low = low;
  mesh.high = high;
  return mesh;
}

TEST(Blank, CylinderDepthIsRadiusMinusDistanceFromTheAxis) {
  Blank blank = cylinder(63, 12);
  blank.centre = {1, -2};
  EXPECT_NEAR(blank.plan_depth_mm({1, -2}, 5), 31.5, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({1 + 3, -2 + 4}, 5), 26.5, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({1 + 30, -2 + 40}, 5), -18.5, kRounding);
  blank.allowance_mm = 0.5;
  EXPECT_NEAR(blank.plan_depth_mm({1, -2}, 5), 32.0, kRounding);
}

TEST(Blank, IsNowhereAboveAndBelowItself) {
  const Blank blank = cylinder(63, 12);
  EXPECT_LT(blank.plan_depth_mm({0, 0}, 12.001), 0);
  EXPECT_LT(blank.plan_depth_mm({0, 0}, -0.001), 0);
  EXPECT_GT(blank.plan_depth_mm({0, 0}, 12.0), 0);
  EXPECT_GT(blank.plan_depth_mm({0, 0}, 0.0), 0);
  EXPECT_TRUE(std::isfinite(blank.plan_depth_mm({0, 0}, 13)));
}

TEST(Blank, BoxDistanceOutsideACornerIsMeasuredToTheCorner) {
  const Blank blank = box({40, 20}, 10);
  EXPECT_NEAR(blank.plan_depth_mm({0, 0}, 5), 10, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({18, 0}, 5), 2, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({23, 0}, 5), -3, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({20 + 3, -10 - 4}, 5), -5, kRounding); // 3-4-5 triangle
}

TEST(Blank, RevolvedRadiusIsInterpolatedBetweenProfilePoints) {
  const Blank blank = frustum();
  for (double z : {0.0, 2.0, 4.0, 7.0, 8.0, 11.0}) {
    const double radius_mm = z < 8 ? 20 - 10 * z / 8 : 10;
    EXPECT_NEAR(blank.plan_depth_mm({0, 5}, z), radius_mm - 5, kRounding) << z;
  }
}

TEST(Blank, TopOfAFrustumIsWhereTheProfileReachesThatRadius) {
  const Blank blank = frustum();
  EXPECT_NEAR(blank.top_mm({5, 0}).value(), 12, kRounding);
  EXPECT_NEAR(blank.top_mm({0, 15}).value(), 4, kRounding); // radius 15 at z = 8 (20 - 15)/10
  EXPECT_NEAR(blank.top_mm({0, 19.99}).value(), 0.008, kRounding);
  EXPECT_FALSE(blank.top_mm({0, 20.01}).has_value());
}

TEST(Blank, ElephantFootFadesLinearlyFromTheBottom) {
  Blank blank = cylinder(60, 12);
  blank.elephant_foot_mm = 0.2;
  blank.elephant_foot_height_mm = 0.5;
  for (double z : {0.0, 0.1, 0.25, 0.5, 0.6, 12.0}) {
    const double extra_mm = z < 0.5 ? 0.2 * (1 - z / 0.5) : 0.0;
    EXPECT_NEAR(blank.plan_depth_mm({0, 0}, z), 30 + extra_mm, kRounding) << z;
    EXPECT_NEAR(blank.wall_stock_mm({30, 0}, {1, 0}, z, 5), extra_mm, kRounding) << z;
  }
  // Halfway out on the foot its surface is halfway up.
  EXPECT_NEAR(blank.top_mm({30.1, 0}).value(), 0.25, kRounding);
  EXPECT_FALSE(blank.top_mm({30.3, 0}).has_value());
}

TEST(Blank, ElephantFootNarrowsHolesAndKeepsBoxCornersSharp) {
  Blank blank = box({40, 20}, 10);
  blank.elephant_foot_mm = 0.2;
  blank.elephant_foot_height_mm = 0.5;
  blank.rounds.push_back({{0, 0}, 8, 0, 10, true});
  EXPECT_NEAR(blank.plan_depth_mm({3.9, 0}, 0.0), 0.1, kRounding); // hole radius 3.8
  EXPECT_NEAR(blank.plan_depth_mm({3.9, 0}, 5.0), -0.1, kRounding);
  EXPECT_NEAR(blank.top_mm({3.9, 0}).value(), 0.25, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({20.2, 10.2}, 0.0), 0.0, kRounding);
  EXPECT_NEAR(blank.top_mm({20.1, 10.1}).value(), 0.25, kRounding);
}

TEST(Blank, HoleTakesAwayAndBossAdds) {
  Blank blank = cylinder(60, 12);
  blank.rounds.push_back({{10, 0}, 8, 5, 12, true});    // blind hole from the top down to 5
  blank.rounds.push_back({{-10, 0}, 6, 12, 15, false}); // boss on top
  EXPECT_NEAR(blank.plan_depth_mm({11, 0}, 8), -3, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({16, 0}, 8), 2, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({11, 0}, 3), 19, kRounding);
  EXPECT_NEAR(blank.plan_depth_mm({-11, 0}, 14), 2, kRounding);
  EXPECT_LT(blank.plan_depth_mm({0, 0}, 14), 0);
  EXPECT_NEAR(blank.top_mm({11, 0}).value(), 5, kRounding);
  EXPECT_NEAR(blank.top_mm({-11, 0}).value(), 15, kRounding);
  EXPECT_NEAR(blank.top_mm({0, 0}).value(), 12, kRounding);
  blank.rounds[0].z_bottom_mm = 0;
  EXPECT_FALSE(blank.top_mm({11, 0}).has_value());
}

TEST(Blank, GrownOutlineStandsOutByTheAllowance) {
  Blank blank;
  blank.shape = BlankShape::grown;
  blank.grown_from = Outline::rounded_rectangle({0, 0}, 40, 20, 4);
  blank.allowance_mm = 0.6;
  blank.z_top_mm = 10;
  EXPECT_NEAR(blank.plan_depth_mm({20, 0}, 5), 0.6, kRounding);
  // Along the corner's diagonal the arc of radius 4 round (16, 6) has grown to 4.6.
  const double diagonal = std::sqrt(0.5);
  EXPECT_NEAR(blank.plan_depth_mm({16 + 4.6 * diagonal, 6 + 4.6 * diagonal}, 5), 0.0, kRounding);
  EXPECT_NEAR(blank.top_mm({20.5, 0}).value(), 10, kRounding);
  EXPECT_FALSE(blank.top_mm({20.7, 0}).has_value());
}

TEST(Blank, MeshOfABoxIsLikeTheBoxItself) {
  Blank blank;
  blank.shape = BlankShape::mesh;
  blank.mesh = MeshRays(box_mesh({-20, -10, 0}, {20, 10, 8}));
  blank.z_top_mm = 8;
  blank.allowance_mm = 0.3;
  for (double z : {0.0, 0.5, 4.0, 8.0}) {
    EXPECT_NEAR(blank.plan_depth_mm({19, 0}, z), 1.3, 1e-9) << z;
    EXPECT_NEAR(blank.wall_stock_mm({19.5, 1}, {1, 0}, z, 5), 0.8, 1e-8) << z; // bisected to 1e-9
  }
  EXPECT_LT(blank.plan_depth_mm({0, 0}, 8.1), 0);
  EXPECT_NEAR(blank.top_mm({1, 2}).value(), 8, 1e-9);
  EXPECT_NEAR(blank.top_mm({20.2, 2}).value(), 8, 1e-9); // on the allowance, past the mesh itself
  EXPECT_FALSE(blank.top_mm({20.4, 2}).has_value());
}

TEST(Blank, PlanBoxHoldsAllowanceFootAndBosses) {
  Blank blank = cylinder(60, 12);
  blank.allowance_mm = 0.5;
  blank.elephant_foot_mm = 0.25;
  blank.elephant_foot_height_mm = 0.4;
  EXPECT_EQ(blank.low_mm(), Vec2(-30.75, -30.75));
  blank.rounds.push_back({{30, 0}, 10, 0, 12, false});
  EXPECT_EQ(blank.high_mm(), Vec2(35.25, 30.75));
}

} // namespace
} // namespace asperity
