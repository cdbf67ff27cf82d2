// Shares of variance by an additive fit, and coverage intervals of sorted draws.
#include "asperity/tolerance/variance_share.h"

#include "asperity/tolerance/counter_draw.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace asperity {

namespace {

/// Spread below this share of the size is rounding.
constexpr double kRounding = 1e-9;
constexpr int kUsualDegree = 3;
constexpr std::size_t kDrawsACoefficient = 4;
constexpr double kCoverage = 0.95;

/// Legendre polynomial of that order at x in [-1, 1].
double legendre(int order, double x) {
  double before = 1.0, now = x;
  for (int n = 1; n < order; ++n) {
    const double next = ((2.0 * n + 1.0) * x * now - n * before) / (n + 1.0);
    before = now;
    now = next;
  }
  return order == 0 ? before : now;
}

double mean_of(const std::vector<double> &y) {
  return std::accumulate(y.begin(), y.end(), 0.0) / static_cast<double>(y.size());
}

/// Functions of every deviate side by side, each with mean 0 over the draws.
Matrix basis_of(const Matrix &deviates, std::size_t degree) {
  Matrix basis(deviates.rows, deviates.columns * degree);
  for (std::size_t i = 0; i < deviates.columns; ++i)
    for (std::size_t d = 0; d < degree; ++d) {
      double sum = 0.0;
      for (std::size_t r = 0; r < deviates.rows; ++r) {
        const double g = deviates(r, i);
        const double value =
            d == 0 ? g : legendre(static_cast<int>(d) + 1, 2.0 * normal_share_below(g) - 1.0);
        basis(r, i * degree + d) = value;
        sum += value;
      }
      for (std::size_t r = 0; r < deviates.rows; ++r)
        basis(r, i * degree + d) -= sum / static_cast<double>(deviates.rows);
    }
  return basis;
}

/// Variance of one input's fitted function, less the part that noise in its coefficients makes.
double explained(const Matrix &basis, const LinearFit &fit, std::size_t first, std::size_t degree,
                 double noise) {
  double sum = 0.0;
  for (std::size_t a = first; a < first + degree; ++a)
    for (std::size_t b = first; b < first + degree; ++b) {
      double both = 0.0;
      for (std::size_t r = 0; r < basis.rows; ++r)
        both += basis(r, a) * basis(r, b);
      sum += both * (fit.coefficients[a] * fit.coefficients[b] - noise * fit.inverse_normal(a, b));
    }
  return sum;
}

} // namespace

int degree_for(std::size_t draws, std::size_t inputs) {
  for (int degree = kUsualDegree; degree > 0; --degree)
    if (draws >= kDrawsACoefficient * static_cast<std::size_t>(degree) * inputs)
      return degree;
  return 0;
}

std::vector<double> first_order_shares(const Matrix &deviates, const std::vector<double> &y, int degree) {
  assert(deviates.rows == y.size());
  const std::size_t terms = deviates.columns * static_cast<std::size_t>(std::max(degree, 0));
  if (terms == 0 || y.size() < 2 * terms + 2)
    return {};
  const double mean = mean_of(y);
  std::vector<double> centred;
  double square = 0.0, size = 0.0;
  for (const double each : y) {
    centred.push_back(each - mean);
    square += centred.back() * centred.back();
    size = std::max(size, std::abs(each));
  }
  if (!(std::sqrt(square / static_cast<double>(y.size())) > kRounding * size))
    return {};
  const Matrix basis = basis_of(deviates, static_cast<std::size_t>(degree));
  const auto fit = linear_fit(basis, centred);
  if (!fit)
    return {};
  const double noise = fit->squared_residual / static_cast<double>(y.size() - 1 - terms);
  std::vector<double> shares;
  for (std::size_t i = 0; i < deviates.columns; ++i) {
    const auto per_input = static_cast<std::size_t>(degree);
    shares.push_back(explained(basis, *fit, i * per_input, per_input, noise) / square);
  }
  return shares;
}

Spread spread_of(std::vector<double> y) {
  assert(!y.empty());
  Spread spread;
  spread.mean = mean_of(y);
  double square = 0.0;
  for (const double each : y)
    square += (each - spread.mean) * (each - spread.mean);
  const auto count = static_cast<double>(y.size());
  spread.standard_deviation = y.size() > 1 ? std::sqrt(square / (count - 1.0)) : 0.0;

  // JCGM 101, 7.7: q of the M sorted values span the interval; r counted from 1 is the first of them.
  std::sort(y.begin(), y.end());
  const double q = std::floor(kCoverage * count + 0.5);
  const double r = std::max(1.0, std::floor((count - q + 1.0) / 2.0));
  spread.low = y[static_cast<std::size_t>(r) - 1];
  spread.high = y[static_cast<std::size_t>(std::min(r + q, count)) - 1];
  return spread;
}

} // namespace asperity
