// Nonlinear least squares against certified values.
#include "asperity/calibrate/least_squares.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

struct Saturation {
  std::vector<double> x, y;

  /// y = b1 (1 - exp(-b2 x)), residuals unweighted.
  std::optional<std::vector<double>> operator()(std::span<const double> b) const {
    std::vector<double> r;
    for (std::size_t i = 0; i < x.size(); ++i)
      r.push_back(b[0] * (1.0 - std::exp(-b[1] * x[i])) - y[i]);
    return r;
  }
};

struct Certified {
  double value[2], standard_deviation[2], squared_residual;
};

// NIST Statistical Reference Datasets, nonlinear regression: Misra1a (lower difficulty) and BoxBOD (higher).
// Data and certified values from memory; SciPy 1.10.1 curve_fit gives the same to nine and seven digits.
const Saturation kMisra1a{
    {77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0},
    {10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78}};
constexpr Certified kMisra1aAnswer{
    {2.3894212918e+02, 5.5015643181e-04}, {2.7070075241e+00, 7.2668688436e-06}, 1.2455138894e-01};
const Saturation kBoxBod{{1, 2, 3, 5, 7, 10}, {109, 149, 149, 191, 213, 224}};
constexpr Certified kBoxBodAnswer{
    {2.1380940889e+02, 5.4723748542e-01}, {1.2354515176e+01, 1.0455993237e-01}, 1.1680088766e+03};

/// Digits asked of the answer; the standard errors rest on central differences, right to some 1e-7.
constexpr double kDigits = 1e-6;

void expect_certified(const Saturation &set, const std::vector<double> &start, const Certified &answer) {
  LeastSquaresOptions options;
  options.scale = {answer.value[0], answer.value[1]};
  options.difference = 1e-4;
  options.close_enough = 1e-9;
  options.most_steps = 200;
  const auto found = least_squares(set, start, options);
  ASSERT_TRUE(found && found->converged);
  EXPECT_NEAR(found->squared_residual, answer.squared_residual, answer.squared_residual * kDigits);
  const auto linear = linear_fit(found->jacobian, found->residuals);
  ASSERT_TRUE(linear);
  const double variance = found->squared_residual / static_cast<double>(set.x.size() - 2);
  for (std::size_t i = 0; i < 2; ++i) {
    EXPECT_NEAR(found->parameters[i], answer.value[i], answer.value[i] * kDigits);
    EXPECT_NEAR(std::sqrt(variance * linear->inverse_normal(i, i)), answer.standard_deviation[i],
                answer.standard_deviation[i] * kDigits * 10.0);
  }
}

TEST(LeastSquares, ReproducesCertifiedValuesFromBothStarts) {
  expect_certified(kMisra1a, {500, 0.0001}, kMisra1aAnswer);
  expect_certified(kMisra1a, {250, 0.0005}, kMisra1aAnswer);
  expect_certified(kBoxBod, {100, 0.75}, kBoxBodAnswer);
  expect_certified(kBoxBod, {1, 1}, kBoxBodAnswer);
}

/// A sum of squares in doubles does not see a change of the parameters below the root of the rounding, 1e-8.
constexpr double kUnseen = 1e-8;

TEST(LeastSquares, OneStepSolvesALinearProblem) {
  const Residuals line = [](std::span<const double> b) {
    return std::optional(
        std::vector<double>{b[0] + b[1] - 1.0, b[0] + 2.0 * b[1] - 2.0, b[0] + 3.0 * b[1] - 4.0});
  };
  LeastSquaresOptions options;
  options.scale = {1.0, 1.0};
  options.close_enough = 1e-10;
  const auto found = least_squares(line, {0.0, 0.0}, options);
  ASSERT_TRUE(found && found->converged);
  EXPECT_NEAR(found->parameters[1], 1.5, kUnseen); // plane geometry: slope of (1,1) (2,2) (3,4)
  EXPECT_NEAR(found->parameters[0], -2.0 / 3.0, kUnseen);
}

TEST(LeastSquares, GivesTheSameBitsOnOneThreadAndOnMany) {
  LeastSquaresOptions options;
  options.scale = {kMisra1aAnswer.value[0], kMisra1aAnswer.value[1]};
  options.threads = 1;
  const auto one = least_squares(kMisra1a, {250, 0.0005}, options);
  options.threads = 4;
  const auto many = least_squares(kMisra1a, {250, 0.0005}, options);
  ASSERT_TRUE(one && many);
  EXPECT_EQ(one->parameters, many->parameters);
}

TEST(LeastSquares, HasNoAnswerWhereTheModelHasNone) {
  const Residuals none = [](std::span<const double>) { return std::optional<std::vector<double>>(); };
  LeastSquaresOptions options;
  options.scale = {1.0};
  EXPECT_FALSE(least_squares(none, {0.0}, options));
}

} // namespace
} // namespace asperity
