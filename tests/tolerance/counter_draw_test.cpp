// Random numbers by counter against published answers and an independent quantile.
#include "asperity/tolerance/counter_draw.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

using Words = std::array<std::uint32_t, 4>;

// Known answers that come with the published generator (Philox-4x32-10); from memory.
TEST(Philox, GivesThePublishedAnswers) {
  EXPECT_EQ(philox({0, 0, 0, 0}, {0, 0}), (Words{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8}));
  EXPECT_EQ(philox({~0u, ~0u, ~0u, ~0u}, {~0u, ~0u}),
            (Words{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd}));
  EXPECT_EQ(philox({0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344}, {0xa4093822, 0x299f31d0}),
            (Words{0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1}));
}

// SciPy 1.10.1, scipy.special.ndtri. A few units in the last place.
TEST(NormalQuantile, AgreesWithAnIndependentOne) {
  constexpr double kLastPlaces = 4e-15;
  constexpr double kQuantiles[][2] = {
      {1e-300, -37.047096299361201}, {1e-20, -9.2623400897984087},  {1e-10, -6.3613409024040557},
      {0.001, -3.0902323061678132},  {0.025, -1.9599639845400545},  {0.07, -1.4757910281791706},
      {0.0749, -1.4402382675279635}, {0.0751, -1.4388253927525403}, {0.3, -0.52440051270804089},
      {0.6, 0.25334710313579972},    {0.9251, 1.4402382675279635},  {0.975, 1.959963984540054}};
  for (const auto &[p, g] : kQuantiles)
    EXPECT_NEAR(normal_quantile(p), g, kLastPlaces * std::abs(g)) << p;
  EXPECT_EQ(normal_quantile(0.5), 0.0);
}

TEST(NormalQuantile, IsTheInverseOfTheDistribution) {
  for (double g = -6.0; g <= 6.0; g += 0.37)
    EXPECT_NEAR(normal_quantile(normal_share_below(g)), g, 1e-7) << "1 - p loses digits above";
}

// The sum of n standard normals has standard deviation sqrt(n), that of their squares sqrt(2 n): four of
// them.
TEST(NormalDraw, HasTheMomentsOfTheNormalDistribution) {
  constexpr int kDraws = 100000;
  double sum = 0.0, squares = 0.0, both = 0.0;
  for (std::uint64_t draw = 0; draw < kDraws; ++draw) {
    const double a = normal_draw(7, draw, "z_zero_mm"), b = normal_draw(7, draw, "x_zero_mm");
    sum += a;
    squares += a * a;
    both += a * b;
  }
  EXPECT_NEAR(sum, 0.0, 4.0 * std::sqrt(kDraws));
  EXPECT_NEAR(squares, kDraws, 4.0 * std::sqrt(2.0 * kDraws));
  EXPECT_NEAR(both, 0.0, 4.0 * std::sqrt(kDraws)) << "two names are independent";
}

TEST(NormalDraw, DependsOnSeedDrawAndNameOnly) {
  EXPECT_EQ(normal_draw(1, 5, "runout"), normal_draw(1, 5, "runout"));
  EXPECT_NE(normal_draw(1, 5, "runout"), normal_draw(2, 5, "runout"));
  EXPECT_NE(normal_draw(1, 5, "runout"), normal_draw(1, 6, "runout"));
  EXPECT_NE(normal_draw(1, 5, "runout"), normal_draw(1, 5, "stiffness"));
}

} // namespace
} // namespace asperity
