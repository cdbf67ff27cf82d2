// Least squares against certified values of an ill-conditioned set, axes against an independent solver.
#include "asperity/tolerance/linear_fit.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

// NIST Statistical Reference Datasets, linear regression, Longley: data and certified values; from memory.
constexpr double kLongley[][7] = {
    {60323, 83.0, 234289, 2356, 1590, 107608, 1947},  {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
    {60171, 88.2, 258054, 3682, 1616, 109773, 1949},  {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
    {63221, 96.2, 328975, 2099, 3099, 112075, 1951},  {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
    {64989, 99.0, 365385, 1870, 3547, 115094, 1953},  {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
    {66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
    {68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
    {68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
    {69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962}};
constexpr double kCertified[][2] = {
    {-3482258.63459582, 890420.383607373},         {15.0618722713733, 84.9149257747669},
    {-0.358191792925910e-1, 0.334910077722432e-1}, {-2.02022980381683, 0.488399681651699},
    {-1.03322686717359, 0.214274163161675},        {-0.511041056535807e-1, 0.226073200069370},
    {1829.15146461355, 455.478499142212}};
/// The set's condition number, some 5e9, times the rounding of a double.
constexpr double kLongleyRounding = 1e-8;

TEST(LinearFit, ReproducesCertifiedValuesOfAnIllConditionedSet) {
  Matrix a(std::size(kLongley), 7);
  std::vector<double> y;
  for (std::size_t r = 0; r < a.rows; ++r) {
    y.push_back(kLongley[r][0]);
    a(r, 0) = 1.0;
    for (std::size_t c = 1; c < 7; ++c)
      a(r, c) = kLongley[r][c];
  }
  const auto fit = linear_fit(a, y);
  ASSERT_TRUE(fit);
  const double variance = fit->squared_residual / 9.0;
  EXPECT_NEAR(std::sqrt(variance), 304.854073561965, 304.854 * kLongleyRounding);
  for (std::size_t i = 0; i < 7; ++i) {
    EXPECT_NEAR(fit->coefficients[i], kCertified[i][0], std::abs(kCertified[i][0]) * kLongleyRounding);
    EXPECT_NEAR(std::sqrt(variance * fit->inverse_normal(i, i)), kCertified[i][1],
                kCertified[i][1] * kLongleyRounding);
  }
}

TEST(LinearFit, RefusesDependentColumnsAndTooFewRows) {
  Matrix twice(4, 2);
  for (std::size_t r = 0; r < 4; ++r) {
    twice(r, 0) = static_cast<double>(r + 1);
    twice(r, 1) = 3.0 * static_cast<double>(r + 1);
  }
  EXPECT_FALSE(linear_fit(twice, {1, 2, 3, 5}));
  EXPECT_FALSE(linear_fit(Matrix(1, 2), {1}));
  EXPECT_FALSE(linear_fit(Matrix(3, 1), {1, 2, 3})) << "a column of zeros";
}

// Eigenvalues of the 4 x 4 Hilbert matrix: SciPy 1.10.1 with its LAPACK (numpy.linalg.eigvalsh), nine digits.
TEST(SymmetricAxes, AgreeWithAnIndependentSolver) {
  Matrix hilbert(4, 4);
  for (std::size_t r = 0; r < 4; ++r)
    for (std::size_t c = 0; c < 4; ++c)
      hilbert(r, c) = 1.0 / static_cast<double>(r + c + 1);
  const SymmetricAxes axes = symmetric_axes(hilbert);
  const double expected[] = {1.50021428e+00, 1.69141220e-01, 6.73827361e-03, 9.67023040e-05};
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(axes.values[i], expected[i], 5e-9 * std::max(1.0, expected[i]));
  const Matrix turned = product(hilbert, axes.axes);
  for (std::size_t c = 0; c < 4; ++c)
    for (std::size_t r = 0; r < 4; ++r)
      EXPECT_NEAR(turned(r, c), axes.values[c] * axes.axes(r, c), 1e-14);
}

} // namespace
} // namespace asperity
