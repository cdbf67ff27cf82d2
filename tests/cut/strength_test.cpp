// Breaking at the grip, hold-down and section values.
#include "asperity/cut/strength.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {
constexpr double kRounding = 1e-9;
}

TEST(BaseBending, SolidPostBearsHundredElevenNewton) {
  // Worked number: 20 x 20 mm, force 60 mm up, 5 MPa allowed: W 1333 mm^3, 111 N; half the last digit.
  const double w = rectangle_section_modulus_mm3(20, 20);
  EXPECT_NEAR(w, 1333, 0.5);
  EXPECT_NEAR(5 / base_bending_stress_MPa(1, 60, w, 1), 111, 0.5);
}

TEST(BaseBending, ThinNeckBearsSevenNewton) {
  // Worked number: neck 20 x 5 mm, same force: 6.9 N.
  EXPECT_NEAR(5 / base_bending_stress_MPa(1, 60, rectangle_section_modulus_mm3(20, 5), 1), 6.9, 0.05);
}

TEST(BaseBending, StressConcentrationMultiplies) {
  const double w = rectangle_section_modulus_mm3(20, 20);
  EXPECT_NEAR(base_bending_stress_MPa(10, 60, w, kSquareCornerConcentration), 2 * 10 * 60 / w, kRounding);
}

TEST(HoldDown, BoltPreloadMatchesWorkedNumber) {
  // Worked number: M6 at 3 N m, nut factor 0.2: 2500 N.
  EXPECT_NEAR(bolt_preload_N(3, 6), 2500, kRounding);
}

TEST(HoldDown, FrictionHoldsWhatLiftLeaves) {
  // Coulomb friction.
  EXPECT_NEAR(holding_force_N(1000, 0.25, 200), 200, kRounding);
  EXPECT_EQ(holding_force_N(100, 0.25, 200), 0.0);
}

TEST(Sections, FollowHandbookFormulas) {
  // Handbook values of a round bar of 10 mm: I 490.87 mm^4, W 98.17 mm^3 [from memory]; W = I/(h/2) by
  // definition.
  EXPECT_NEAR(round_second_moment_mm4(10), 490.87, 0.005);
  EXPECT_NEAR(round_section_modulus_mm3(10), 98.17, 0.005);
  EXPECT_NEAR(rectangle_second_moment_mm4(20, 5) / 2.5, rectangle_section_modulus_mm3(20, 5), kRounding);
  EXPECT_NEAR(rectangle_second_moment_mm4(20, 20), 13333.333, 0.001);
}
