// Cutter silhouettes against circle and cone geometry.
#include "asperity/shape/cutter_profile.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12;
/// Next to an upright wall the height changes by sqrt(2 r d) for a radius d too small: rounding of 1e-16
/// grows.
constexpr double kNearUpright_mm = 1e-7;

struct Case {
  std::string name;
  CutterProfile profile;
};

std::vector<Case> all_kinds() {
  return {{"flat", CutterProfile::flat(3.0)},
          {"ball", CutterProfile::ball(3.0)},
          {"corner radius", CutterProfile::corner_radius(3.0, 0.5)},
          {"tapered ball", CutterProfile(3.0, 0.0, 0.5, rad_from_deg(7.0))},
          {"tapered corner radius", CutterProfile(3.0, 0.4, 0.5, rad_from_deg(7.0))},
          {"vee with a flat", CutterProfile(3.0, 0.1, 0.0, rad_from_deg(30.0))},
          {"sharp vee", CutterProfile(3.0, 0.0, 0.0, rad_from_deg(45.0))},
          {"grown ball", CutterProfile::ball(3.0).grown(0.02)},
          {"shrunk ball", CutterProfile::ball(3.0).grown(-0.02)},
          {"grown tapered ball", CutterProfile(3.0, 0.0, 0.5, rad_from_deg(7.0)).grown(0.02)}};
}

TEST(CutterProfile, BallFollowsItsCircle) {
  const CutterProfile ball = CutterProfile::ball(3.0);
  EXPECT_TRUE(ball.is_ball());
  for (const double rho : {0.0, 0.25, 1.5, 2.4, 3.0})
    EXPECT_NEAR(ball.height_at(rho), 3.0 - std::sqrt(9.0 - rho * rho), kRounding_mm);
  EXPECT_DOUBLE_EQ(ball.height_at(1.8), 0.6); // 3-4-5 triangle
  EXPECT_DOUBLE_EQ(ball.radius_at(0.6), 1.8);
}

TEST(CutterProfile, BallIsExactNearItsTip) {
  // Series h = rho^2 / 2R (1 + rho^2 / 4R^2 + ...): at 1e-6 mm the second term is 3e-14 of the first.
  EXPECT_NEAR(CutterProfile::ball(3.0).height_at(1e-6) / (1e-12 / 6.0), 1.0, 1e-13);
}

TEST(CutterProfile, FlatIsADisc) {
  const CutterProfile flat = CutterProfile::flat(3.0);
  EXPECT_TRUE(flat.is_flat());
  EXPECT_EQ(flat.height_at(0.0), 0.0);
  EXPECT_EQ(flat.height_at(3.0), 0.0);
  EXPECT_EQ(flat.radius_at(0.0), 3.0);
  EXPECT_EQ(flat.shoulder_mm(), 0.0);
}

// Corner radius 0.5 on D6: floor steps at stepovers 5.2, 5.5, 6 mm are 10.102051, 66.987298, 500 um (derived:
// half the stepover less the flat enters the circle formula r - sqrt(r^2 - d^2)).
TEST(CutterProfile, CornerRadiusMatchesTheCircleBeyondItsFlat) {
  const CutterProfile cutter = CutterProfile::corner_radius(3.0, 0.5);
  constexpr double kPrinted_mm = 0.5e-9; // figures given to a millionth of a micrometre
  EXPECT_EQ(cutter.height_at(2.5), 0.0);
  EXPECT_NEAR(cutter.height_at(2.6), 10.102051e-3, kPrinted_mm);
  EXPECT_NEAR(cutter.height_at(2.75), 66.987298e-3, kPrinted_mm);
  EXPECT_DOUBLE_EQ(cutter.height_at(3.0), 0.5);
  EXPECT_DOUBLE_EQ(cutter.shoulder_mm(), 0.5);
}

TEST(CutterProfile, VeeHasTheHeightOfItsCone) {
  const CutterProfile vee(3.0, 0.1, 0.0, rad_from_deg(30.0));
  EXPECT_NEAR(vee.height_at(1.1), std::sqrt(3.0), kRounding_mm);
  EXPECT_NEAR(vee.shoulder_mm(), 2.9 * std::sqrt(3.0), kRounding_mm);
  EXPECT_NEAR(vee.radius_at(std::sqrt(3.0)), 1.1, kRounding_mm);
}

TEST(CutterProfile, HeightAndRadiusUndoEachOther) {
  for (const Case &c : all_kinds()) {
    const double flat = std::max(0.0, c.profile.tip_flat_mm());
    for (int i = 1; i < 100; ++i) {
      const double rho = flat + (c.profile.radius_mm() - flat) * i / 100.0;
      if (c.profile.is_flat())
        continue; // a disc has no slope to invert
      EXPECT_NEAR(c.profile.radius_at(c.profile.height_at(rho)), rho, kRounding_mm)
          << c.name << " at " << rho;
    }
  }
}

TEST(CutterProfile, NothingIsBelowTheTipOrBeyondTheRadius) {
  for (const Case &c : all_kinds()) {
    EXPECT_LT(c.profile.radius_at(-1e-9), 0.0) << c.name;
    EXPECT_EQ(c.profile.height_at(c.profile.radius_mm() + 1e-9), INFINITY) << c.name;
    EXPECT_EQ(c.profile.radius_at(c.profile.shoulder_mm() + 1e-9), c.profile.radius_mm()) << c.name;
    EXPECT_NEAR(c.profile.height_at(c.profile.radius_mm()), c.profile.shoulder_mm(), kNearUpright_mm)
        << c.name;
  }
}

TEST(CutterProfile, ArcAndConeShareTheirTangent) {
  const double half_angle = rad_from_deg(7.0);
  const CutterProfile tapered(3.0, 0.4, 0.5, half_angle);
  const double join = 0.4 + 0.5 * std::cos(half_angle);
  constexpr double kStep = 1e-6;
  const double below = (tapered.height_at(join) - tapered.height_at(join - kStep)) / kStep;
  const double above = (tapered.height_at(join + kStep) - tapered.height_at(join)) / kStep;
  // One-sided difference: kStep / 2 times the arc's second derivative r^2 / (r sin)^3 = 1 / (0.5 sin^3 7 deg)
  // = 1105.
  constexpr double kSlope = 0.5 * 1e-6 * 1105.0 * 1.1;
  EXPECT_NEAR(below, 1.0 / std::tan(half_angle), kSlope);
  EXPECT_NEAR(above, 1.0 / std::tan(half_angle), kSlope);
  EXPECT_NEAR(tapered.height_at(join), 0.5 * (1.0 - std::sin(half_angle)), kRounding_mm);
}

TEST(CutterProfile, EveryKindIsConvex) {
  for (const Case &c : all_kinds())
    for (int i = 0; i + 2 <= 1000; ++i) {
      const double step = c.profile.radius_mm() / 1000.0;
      const double left = c.profile.height_at(step * i), middle = c.profile.height_at(step * (i + 1)),
                   right = c.profile.height_at(step * (i + 2) * (1.0 - 1e-15));
      EXPECT_LE(2.0 * middle, left + right + kNearUpright_mm) << c.name << " at step " << i;
      EXPECT_LE(left, middle) << c.name;
    }
}

TEST(CutterProfile, GrowingMovesTheFlankSideways) {
  for (const Case &c : all_kinds()) {
    const CutterProfile grown = c.profile.grown(0.05);
    EXPECT_DOUBLE_EQ(grown.radius_mm(), c.profile.radius_mm() + 0.05);
    for (const double h : {0.1, 0.3, 2.0})
      EXPECT_NEAR(grown.radius_at(h), c.profile.radius_at(h) + 0.05, kRounding_mm) << c.name << " at " << h;
  }
}

TEST(CutterProfile, AShrunkBallLosesItsTip) {
  // Two arcs 0.02 mm apart from their centres meet on the axis at R - sqrt(R^2 - 0.02^2).
  const CutterProfile shrunk = CutterProfile::ball(3.0).grown(-0.02);
  EXPECT_FALSE(shrunk.is_ball());
  EXPECT_NEAR(shrunk.height_at(0.0), 3.0 - std::sqrt(9.0 - 4e-4), kRounding_mm);
}

} // namespace
} // namespace asperity
