// Checks the corner rule against its published values and against plain geometry.
#include "asperity/base/units.h"
#include "asperity/motion/corner.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

// Reference: junction rule, controller documentation; values derived from it and rounded to whole mm/min.
constexpr double kRoundedToUnit_mm_per_min = 0.5;
// A handful of floating-point operations on numbers of order one.
constexpr double kRounding = 1e-12;

TEST(Corner, SpeedMatchesTableOfFiveMachinesBySixTurns) {
  const double turn_deg[] = {10, 30, 45, 90, 120, 150};
  const struct {
    double acceleration, deviation, speed_mm_per_min[6];
  } rows[] = {{50, 0.01, {686, 226, 148, 66, 42, 25}},
              {250, 0.02, {2171, 714, 467, 208, 134, 79}},
              {400, 0.02, {2746, 904, 591, 264, 170, 100}},
              {500, 0.02, {3070, 1010, 661, 295, 190, 112}},
              {1000, 0.02, {4342, 1429, 935, 417, 268, 159}}};
  for (const auto &row : rows)
    for (int i = 0; i < 6; ++i) {
      const double v = corner_speed_mm_per_s(row.acceleration, row.deviation, rad_from_deg(turn_deg[i]));
      EXPECT_NEAR(mm_per_min_from_mm_per_s(v), row.speed_mm_per_min[i], kRoundedToUnit_mm_per_min)
          << row.acceleration << " mm/s2, " << turn_deg[i] << " deg";
    }
}

// Controller documentation states the square corner's form on its own: v^2 = a delta (1 + sqrt 2).
TEST(Corner, SquareCornerHasItsClosedForm) {
  for (const double a : {50.0, 400.0, 3000.0})
    for (const double deviation : {0.002, 0.02, 0.2}) {
      const double v = corner_speed_mm_per_s(a, deviation, kPi / 2);
      EXPECT_NEAR(v * v, a * deviation * (1.0 + std::sqrt(2.0)), kRounding * a);
    }
}

// The rule as it is printed, in the angle between the legs rather than the turn.
TEST(Corner, SpeedMatchesRuleAsPrinted) {
  for (double turn = 0.05; turn < kPi; turn += 0.05) {
    const double s = std::sin((kPi - turn) / 2), v = corner_speed_mm_per_s(400, 0.02, turn);
    EXPECT_NEAR(v * v / (400 * 0.02 * s / (1 - s)), 1.0, 1e-10); // 1 - s of the printed form loses digits
  }
}

TEST(Corner, ReversalStopsAndStraightOnIsUnlimited) {
  EXPECT_EQ(corner_speed_mm_per_s(400, 0.02, kPi), 0.0);
  EXPECT_TRUE(std::isinf(corner_speed_mm_per_s(400, 0.02, 0.0)));
  EXPECT_TRUE(std::isinf(short_leg_corner_speed_mm_per_s(400, 0.02, 0.0, 0.001)));
  EXPECT_EQ(corner_speed_mm_per_s(400, 0.0, 1.0), 0.0);
}

// derived: centre, tangent point and corner form a right triangle with legs r and trim; its hypotenuse is r +
// deviation.
TEST(Corner, TangentArcPassesDeviationFromCorner) {
  for (double turn = 0.01; turn < 3.1; turn += 0.1)
    for (const double deviation : {0.005, 0.05, 2.0}) {
      const double r = corner_radius_mm(deviation, turn), trim = corner_trim_mm(deviation, turn);
      EXPECT_NEAR(std::hypot(r, trim) - r, deviation, kRounding * std::max(r, 1.0));
      EXPECT_NEAR(trim, r * std::tan(turn / 2), kRounding * std::max(trim, 1.0));
      EXPECT_NEAR(corner_deviation_mm(trim, turn), deviation, kRounding);
    }
}

// Controller documentation: v^2 <= 0.5 d tan(theta/2) a for short segments, theta the angle between the legs.
TEST(Corner, ShortLegCapMatchesRuleAsPrinted) {
  for (const double turn : {0.02, 0.3, 1.0, 2.0, 3.0}) {
    const double leg = 1e-3, theta = kPi - turn; // so short that the deviation never counts
    const double v = short_leg_corner_speed_mm_per_s(400, 0.02, turn, leg);
    EXPECT_NEAR(v * v / (0.5 * leg * std::tan(theta / 2) * 400), 1.0, 1e-11) << turn;
  }
}

TEST(Corner, LongLegsLeaveTheRuleAlone) {
  EXPECT_EQ(short_leg_corner_speed_mm_per_s(400, 0.02, 1.0, 10.0), corner_speed_mm_per_s(400, 0.02, 1.0));
}

TEST(Corner, TurnIsExactForTinyTurnsAndReversals) {
  for (const double turn : {1e-12, 1e-7, 0.1, 1.0, kPi / 2, 3.0, kPi - 1e-7}) {
    const Vec3 in(3.0, 0.0, 0.0), out(0.5 * std::cos(turn), 0.0, 0.5 * std::sin(turn));
    EXPECT_NEAR(turn_between_rad(in, out), turn, 4e-16 * std::max(1.0, turn) + kRounding * turn);
  }
  EXPECT_EQ(turn_between_rad({1, 2, 3}, {1, 2, 3}), 0.0);
  EXPECT_EQ(turn_between_rad({0, 0, 1}, {0, 0, -2}), kPi);
}

} // namespace
} // namespace asperity
