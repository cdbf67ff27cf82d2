// Shares of variance and coverage intervals of functions whose answers are known.
#include "asperity/tolerance/variance_share.h"

#include "asperity/tolerance/counter_draw.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace asperity {
namespace {

Matrix draws_of(std::size_t draws, std::size_t inputs) {
  const char *const names[] = {"a", "b", "c", "d"};
  Matrix deviates(draws, inputs);
  for (std::size_t r = 0; r < draws; ++r)
    for (std::size_t i = 0; i < inputs; ++i)
      deviates(r, i) = normal_draw(3, r, names[i]);
  return deviates;
}

template <class Function> std::vector<double> values_of(const Matrix &deviates, const Function &function) {
  std::vector<double> y;
  for (std::size_t r = 0; r < deviates.rows; ++r)
    y.push_back(function(&deviates.cells[r * deviates.columns]));
  return y;
}

// derived: y = 3 a + 2 b + c with unit normals has variance 14; shares 9/14, 4/14, 1/14. The sample's own
// covariances of 400 draws stand in the variance: each is off by some 1/sqrt(400), times 2 x 3 x 2/14.
TEST(VarianceShare, OfASumOfStraightLinesIsTheSquareOfItsSlope) {
  constexpr double kSampling = 0.1;
  const Matrix deviates = draws_of(400, 4);
  const auto shares = first_order_shares(
      deviates, values_of(deviates, [](const double *g) { return 5.0 + 3.0 * g[0] + 2.0 * g[1] + g[2]; }), 3);
  ASSERT_EQ(shares.size(), 4u);
  EXPECT_NEAR(shares[0], 9.0 / 14.0, kSampling);
  EXPECT_NEAR(shares[1], 4.0 / 14.0, kSampling);
  EXPECT_NEAR(shares[2], 1.0 / 14.0, kSampling);
  EXPECT_NEAR(shares[3], 0.0, 1e-12) << "the fit is exact";
}

// Ishigami, Homma 1990, sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1 on [-pi, pi]: first-order indices 0.3139,
// 0.4424, 0 (derived: closed integrals, printed in the sensitivity literature). Sampling of 8192 draws, some
// 0.007 by repetition; four of them.
TEST(VarianceShare, OfTheIshigamiFunctionIsThePublishedIndex) {
  constexpr double kSampling = 0.028;
  const Matrix deviates = draws_of(8192, 3);
  const auto x = [](double g) { return std::numbers::pi * (2.0 * normal_share_below(g) - 1.0); };
  const auto ishigami = [&](const double *g) {
    return std::sin(x(g[0])) + 7.0 * std::pow(std::sin(x(g[1])), 2) +
           0.1 * std::pow(x(g[2]), 4) * std::sin(x(g[0]));
  };
  const auto shares = first_order_shares(deviates, values_of(deviates, ishigami), 8);
  ASSERT_EQ(shares.size(), 3u);
  EXPECT_NEAR(shares[0], 0.3139, kSampling);
  EXPECT_NEAR(shares[1], 0.4424, kSampling);
  EXPECT_NEAR(shares[2], 0.0, kSampling);
}

// derived: y = a b varies through the pair alone; no input explains anything by itself.
TEST(VarianceShare, OfAProductIsNoughtForEachFactor) {
  constexpr double kSampling = 0.05;
  const Matrix deviates = draws_of(2000, 2);
  for (const double share :
       first_order_shares(deviates, values_of(deviates, [](const double *g) { return g[0] * g[1]; }), 3))
    EXPECT_NEAR(share, 0.0, kSampling);
}

TEST(VarianceShare, IsNotGivenWhereNothingVariesOrDrawsAreFew) {
  const Matrix deviates = draws_of(20, 4);
  EXPECT_TRUE(first_order_shares(deviates, std::vector<double>(20, 61.98), 1).empty());
  EXPECT_TRUE(
      first_order_shares(deviates, values_of(deviates, [](const double *g) { return g[0]; }), 3).empty());
  EXPECT_EQ(degree_for(200, 9), 3);
  EXPECT_EQ(degree_for(40, 9), 1);
  EXPECT_EQ(degree_for(20, 9), 0);
}

// JCGM 101:2008, 7.7.1: M = 200 values, p = 0.95: q = 190, r = (200 - 190)/2 = 5: from the 5th to the 195th.
TEST(Spread, IntervalIsTheOneOfTheGuide) {
  std::vector<double> y;
  for (int i = 200; i >= 1; --i)
    y.push_back(i);
  const Spread spread = spread_of(y);
  EXPECT_EQ(spread.low, 5.0);
  EXPECT_EQ(spread.high, 195.0);
  EXPECT_DOUBLE_EQ(spread.mean, 100.5);
  EXPECT_NEAR(spread.standard_deviation, std::sqrt(200.0 * 201.0 / 12.0), 1e-9); // n(n+1)/12 for 1..n
}

// The 2.5 % quantile of n normals is off by sqrt(p (1 - p)/n)/phi(1.96), 0.0085 for 1e5; four of them.
TEST(Spread, OfNormalDrawsIsPlusMinusOnePointNineSix) {
  const Matrix deviates = draws_of(100000, 1);
  const Spread spread = spread_of(deviates.cells);
  EXPECT_NEAR(spread.low, -1.96, 0.034);
  EXPECT_NEAR(spread.high, 1.96, 0.034);
}

TEST(Spread, OfOneValueIsThatValue) {
  const Spread spread = spread_of({4.0});
  EXPECT_EQ(spread.low, 4.0);
  EXPECT_EQ(spread.high, 4.0);
  EXPECT_EQ(spread.standard_deviation, 0.0);
}

} // namespace
} // namespace asperity
