// Angles with their sine and cosine against the library's.
#include "turn.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <random>

using namespace asperity;

namespace {

/// One unit in the last place of the mark, of the series and of each of two products.
constexpr double kRounding = 4e-16;

} // namespace

TEST(Turn, HasTheSineAndCosineOfItsAngle) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> near(-9.0 * kPi, 9.0 * kPi), far(-1e4, 1e4); // marks end at 8 pi
  for (int i = 0; i < 20000; ++i) {
    const double rad = i % 2 == 0 ? near(random) : far(random);
    const Turn turn = turn_at(rad);
    EXPECT_EQ(turn.rad, rad);
    EXPECT_NEAR(turn.sin, std::sin(rad), kRounding) << rad;
    EXPECT_NEAR(turn.cos, std::cos(rad), kRounding) << rad;
  }
}

TEST(Turn, IsExactAtTheMarks) {
  for (const int i : {-kMostMarks, -kMarksPerPi, 0, 7, kMarksPerPi / 2, kMarksPerPi, kMostMarks}) {
    const double rad = kPi * i / kMarksPerPi;
    EXPECT_EQ(turn_at(rad).sin, std::sin(rad)) << i;
    EXPECT_EQ(turn_at(rad).cos, std::cos(rad)) << i;
  }
}

TEST(Turn, SumsOfEightAreSumsOfEach) {
  Turns eight{};
  for (std::size_t i = 0; i < kEight; ++i) {
    const Turn turn = turn_at(0.7 * static_cast<double>(i) - 2.0);
    eight.rad[i] = turn.rad, eight.sin[i] = turn.sin, eight.cos[i] = turn.cos;
  }
  const Turn more = turn_at(0.3);
  const Turns sums = sums_of(eight, more);
  for (std::size_t i = 0; i < kEight; ++i) {
    const Turn sum = sum_of({eight.rad[i], eight.sin[i], eight.cos[i]}, more);
    EXPECT_EQ(sums.rad[i], sum.rad);
    EXPECT_EQ(sums.sin[i], sum.sin);
    EXPECT_EQ(sums.cos[i], sum.cos);
  }
}
