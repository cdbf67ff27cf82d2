// Curves against the textbook formulas of lines, circles and helices.
#include "asperity/shape/curve.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12; // a few roundings of numbers below 100 mm

Curve helix() {
  return Curve::plan_arc({13, 2, 5}, {13, 2, 2}, {10, 2}, -4.0 * kPi);
} // two turns down, clockwise

Curve upright_arc() {
  Curve arc;
  arc.axis_x = {1, 0, 0};
  arc.axis_y = {0, 0, 1};
  arc.radius_mm = 2.0;
  arc.start_rad = 0.0;
  arc.sweep_rad = 0.5 * kPi;
  arc.begin = {2, 0, 0};
  arc.end = {0, 0, 2};
  return arc;
}

TEST(Curve, LineRunsEvenlyFromBeginToEnd) {
  const Curve line = Curve::line({1, 2, 3}, {4, 6, 3});
  EXPECT_TRUE(line.is_line());
  EXPECT_FALSE(line.is_plan_arc());
  EXPECT_DOUBLE_EQ(line.length_mm(), 5.0);
  EXPECT_NEAR(glm::distance(line.point(0.25), Vec3(1.75, 3, 3)), 0.0, kRounding_mm);
  EXPECT_EQ(line.velocity(0.5), Vec3(3, 4, 0));
}

// Length of a helix: sqrt((2 pi r n)^2 + rise^2) (handbook formula).
TEST(Curve, HelixLengthMatchesHandbookFormula) {
  EXPECT_NEAR(helix().length_mm(), std::sqrt(std::pow(2.0 * kPi * 3.0 * 2.0, 2) + 9.0), kRounding_mm);
}

TEST(Curve, HelixStaysAtItsRadiusAndDescendsEvenly) {
  for (const double u : {0.0, 0.1, 0.37, 0.5, 1.0}) {
    const Vec3 p = helix().point(u);
    EXPECT_NEAR(glm::distance(plan(p), Vec2(10, 2)), 3.0, kRounding_mm);
    EXPECT_NEAR(p.z, 5.0 - 3.0 * u, kRounding_mm);
  }
  EXPECT_TRUE(helix().is_plan_arc());
}

TEST(Curve, PositiveSweepIsCounterClockwiseFromAbove) {
  const Curve arc = Curve::plan_arc({1, 0, 0}, {0, 1, 0}, {0, 0}, 0.5 * kPi);
  EXPECT_NEAR(glm::distance(arc.point(0.5), Vec3(std::sqrt(0.5), std::sqrt(0.5), 0)), 0.0, kRounding_mm);
  EXPECT_GT(arc.velocity(0.0).y, 0.0);
}

TEST(Curve, VelocityIsTheDerivativeOfThePoint) {
  constexpr double kStep = 1e-5;
  // Central difference: error kStep^2 / 6 times the third derivative, at most 3 mm (4 pi)^3 here.
  constexpr double kDifference_mm = 1e-10 / 6.0 * 3.0 * 64.0 * 31.1 * 2.0;
  for (const Curve &curve : {helix(), upright_arc(), Curve::line({0, 0, 0}, {3, 1, 2})})
    for (const double u : {0.1, 0.5, 0.8}) {
      const Vec3 slope = (curve.point(u + kStep) - curve.point(u - kStep)) / (2.0 * kStep);
      EXPECT_NEAR(glm::distance(slope, curve.velocity(u)), 0.0, kDifference_mm);
    }
}

TEST(Curve, APortionPassesTheSamePoints) {
  for (const Curve &curve : {helix(), upright_arc(), Curve::line({0, 0, 0}, {3, 1, 2})}) {
    const Curve part = curve.portion(0.25, 0.75);
    for (const double u : {0.0, 0.3, 1.0})
      EXPECT_NEAR(glm::distance(part.point(u), curve.point(0.25 + 0.5 * u)), 0.0, kRounding_mm);
    EXPECT_NEAR(part.length_mm(), 0.5 * curve.length_mm(), kRounding_mm);
    EXPECT_NEAR(glm::distance(part.begin, part.point(0.0)), 0.0, kRounding_mm);
    EXPECT_NEAR(glm::distance(part.end, part.point(1.0)), 0.0, kRounding_mm);
  }
}

TEST(Curve, PortionsJoinWithoutARoundingStep) {
  const Curve curve = helix();
  EXPECT_EQ(curve.portion(0.0, 0.3).end, curve.portion(0.3, 1.0).begin);
  EXPECT_EQ(curve.portion(0.0, 0.3).begin, curve.begin);
  EXPECT_EQ(curve.portion(0.3, 1.0).end, curve.end);
}

TEST(Curve, AnUprightArcIsNoPlanArc) {
  EXPECT_FALSE(upright_arc().is_plan_arc());
  EXPECT_NEAR(glm::distance(upright_arc().point(1.0), Vec3(0, 0, 2)), 0.0, kRounding_mm);
  EXPECT_NEAR(upright_arc().length_mm(), kPi, kRounding_mm);
}

TEST(Curve, MovingShiftsEveryPoint) {
  const Vec3 d(1, -2, 3);
  for (const Curve &curve : {helix(), Curve::line({0, 0, 0}, {3, 1, 2})})
    for (const double u : {0.0, 0.6, 1.0})
      EXPECT_NEAR(glm::distance(curve.moved_by(d).point(u), curve.point(u) + d), 0.0, kRounding_mm);
}

} // namespace
} // namespace asperity
