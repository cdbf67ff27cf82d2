// Which way a side-milled wall is pushed, climb and conventional.
#include "asperity/cut/wall_error.h"

#include "asperity/base/units.h"
#include "cut/force_sets.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

constexpr double kRadius_mm = 3, kAxial_mm = 10;

/// Mean force away from a conventional (left) wall [N].
double away_from_left_wall_N(const ForceCoefficients &k, double radial_mm, double feed_per_tooth_mm) {
  const Immersion arc = conventional_immersion(radial_mm, kRadius_mm);
  return -mean_force_N(k, arc, 2, kAxial_mm, feed_per_tooth_mm).y;
}

/// Radial depth over D at which the push away turns into a pull, by halving.
double flip_depth_share(const ForceCoefficients &k, double feed_per_tooth_mm) {
  double light_mm = 1e-3, heavy_mm = kRadius_mm;
  EXPECT_GT(away_from_left_wall_N(k, light_mm, feed_per_tooth_mm), 0);
  EXPECT_LT(away_from_left_wall_N(k, heavy_mm, feed_per_tooth_mm), 0);
  for (int i = 0; i < 50; ++i) {
    const double middle_mm = (light_mm + heavy_mm) / 2;
    if (away_from_left_wall_N(k, middle_mm, feed_per_tooth_mm) > 0)
      light_mm = middle_mm;
    else
      heavy_mm = middle_mm;
  }
  return light_mm / (2 * kRadius_mm);
}

/// The first depth of a scan in steps of 0.05 mm that pulls, over D.
double first_pulling_share(double flip_share) {
  constexpr double kDiameter_mm = 2 * kRadius_mm, kStep_mm = 0.05;
  return std::ceil(flip_share * kDiameter_mm / kStep_mm) * kStep_mm / kDiameter_mm;
}

WallCut aluminium_pass(bool climb, double radial_mm) {
  return {.k = kAluminiumLike,
          .teeth = kSixMillimetreCutter,
          .beam = {25, 25, 4.8, 4.8, 580e3},
          .steady_compliance_mm_per_N = 0,
          .axial_depth_mm = kAxial_mm,
          .radial_depth_mm = radial_mm,
          .feed_per_tooth_mm = 0.05,
          .climb = climb};
}

} // namespace

TEST(ConventionalWall, PushTurnsToPullAtTabulatedDepth) {
  // Derived table for D 6, two flutes, checked there by numerical integration; same signs as Kim & Shin 2021
  // and the wood-milling force records of Palubicki 2021. The table prints the first pulling depth of a scan
  // in steps of 0.05 mm (only so do all six entries come out); the flips themselves lie a little lower.
  constexpr double kHalfDigit = 0.005;
  const double feeds_mm[] = {0.02, 0.05, 0.10};
  const double aluminium[] = {0.29, 0.21, 0.16}, petg[] = {0.35, 0.25, 0.18};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(first_pulling_share(flip_depth_share(kAluminiumLike, feeds_mm[i])), aluminium[i], kHalfDigit);
    EXPECT_NEAR(first_pulling_share(flip_depth_share(kPetgLike, feeds_mm[i])), petg[i], kHalfDigit);
  }
}

TEST(ConventionalWall, TipIsMadeWithoutForceAndHigherUpIsNot) {
  // Derived: the tooth enters tip first, so nothing above it cuts yet.
  const WallCut cut = aluminium_pass(false, 0.3);
  EXPECT_NEAR(wall_load(cut, 0.3, 0).at_once_N, 0, 1e-9);
  EXPECT_GT(wall_load(cut, 0.3, 2).at_once_N, 1);
}

TEST(ConventionalWall, HeavierCutGougesAndLightCutLeavesStock) {
  // Derived, the same table: at 0.05 mm a tooth the sign turns at 0.21 D = 1.26 mm.
  WallCut cut = aluminium_pass(false, 0.3);
  cut.steady_compliance_mm_per_N = machine_compliance_mm_per_N(1);
  EXPECT_GT(wall_error(cut, 0).error_mm, 0);
  cut.radial_depth_mm = 2.4;
  EXPECT_LT(wall_error(cut, 0).error_mm, 0);
}

TEST(ClimbWall, ForceAlwaysPointsAway) {
  // Derived: near phi = pi both the tangential and the radial force point away from the right wall.
  for (const ForceCoefficients &k : {kAluminiumLike, kPetgLike})
    for (const double radial_mm : {0.02, 0.1, 0.5, 1.5, 3.0, 4.5, 6.0})
      for (const double z_mm : {0.0, 1.0, 4.0, 9.0}) {
        WallCut cut = aluminium_pass(true, radial_mm);
        cut.k = k;
        const WallLoad load = wall_load(cut, radial_mm, z_mm);
        EXPECT_GT(load.mean_N, 0);
        EXPECT_GT(load.at_once_N, 0);
      }
}

TEST(ClimbWall, LeansFromProudBaseToTrueTop) {
  // Derived: the point at height z is made while the flute above z still cuts; at the top nothing is above.
  const WallCut cut = aluminium_pass(true, 0.3);
  const double base = wall_error(cut, 0).error_mm, middle = wall_error(cut, 8.5).error_mm,
               top = wall_error(cut, kAxial_mm).error_mm;
  EXPECT_GT(base, middle);
  EXPECT_GT(middle, top);
  EXPECT_NEAR(top, 0, 1e-9);
}
