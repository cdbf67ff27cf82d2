// Fixed points that are known beforehand.
#include "settling.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

/// All parts of a bending in fixed proportions to x [mm].
AxisOffset bending(double x) {
  AxisOffset b;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    b.left[i] = Vec2(0.0, x * (1.0 - 0.1 * static_cast<double>(i)));
    b.right[i] = 0.5 * b.left[i];
  }
  b.axial_mm = -0.2 * x;
  return b;
}

struct Settled {
  double x = 0;
  int rounds = 0;
};

/// x = f(x), from `begin` on.
template <class F> Settled settle(double begin, const F &f) {
  Settling settling(bending(begin));
  for (int rounds = 1; rounds <= 30; ++rounds)
    if (settling.take(bending(f(settling.guess().left[0].y))))
      return {settling.guess().left[0].y, rounds};
  return {NAN, 99};
}

/// Settled where guess and answer agree to this [mm]: the answer is then as near or nearer.
constexpr double kNear_mm = 1.5 * kSettled_mm;

} // namespace

TEST(Settling, ForceThatFallsInProportionIsMetInThreeRounds) {
  // Derived: x = c - g x at c / (1 + g); the line through two looks is the law itself.
  for (const double g : {0.05, 0.3, 0.9, 2.0, 10.0}) {
    const Settled s = settle(0.0, [g](double x) { return 0.01 - g * x; });
    EXPECT_NEAR(s.x, 0.01 / (1.0 + g), kNear_mm) << g;
    EXPECT_LE(s.rounds, 3) << g;
  }
}

TEST(Settling, ForceThatGrowsWithBendingIsFollowed) {
  const Settled s = settle(0.0, [](double x) { return 0.01 + 0.5 * x; });
  EXPECT_NEAR(s.x, 0.02, kNear_mm);
  EXPECT_LE(s.rounds, 3);
}

TEST(Settling, RootLikeContactOfATouchingEdgeSettles) {
  // Arc of contact of a thin chip grows with the root of its depth: x = sqrt(a (d - x)).
  const double a = 0.02, d = 0.0005;
  const double expected = (-a + std::sqrt(a * a + 4.0 * a * d)) / 2.0;
  const Settled s = settle(0.0, [&](double x) { return std::sqrt(a * std::max(0.0, d - x)); });
  EXPECT_NEAR(s.x, expected, kNear_mm);
  EXPECT_LE(s.rounds, 14);
}

TEST(Settling, AcrossAJumpItStaysAtTheJump) {
  // Touching below x = 0.0031, where it would bend to 0.008; free above, where it would spring back to 0.001.
  const Settled s = settle(0.0, [](double x) { return x < 0.0031 ? 0.008 : 0.001; });
  EXPECT_NEAR(s.x, 0.0031, kSettled_mm);
  EXPECT_LE(s.rounds, 30);
}

TEST(Settling, WhatIsSettledAlreadyTakesOneRound) {
  EXPECT_EQ(settle(0.02, [](double) { return 0.02; }).rounds, 1);
}
