// Takes eccentricity and ovality out of a row of a round wall.
#include "groove.h"

#include "robust.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Columns the fit looks at: enough for five numbers, few enough to be quick.
constexpr std::size_t kMostColumns = 720;
/// Rounds of fitting without what stands off by more than kFar robust deviations.
constexpr int kRounds = 4;
constexpr double kFar = 3.0;

using Terms = SlowWaves::Terms;
constexpr std::size_t kTerms = SlowWaves::kTerms;

Terms terms_at(std::size_t column, std::size_t columns) {
  const double t = 2.0 * kPi * static_cast<double>(column) / static_cast<double>(columns);
  return {1.0, std::cos(t), std::sin(t), std::cos(2.0 * t), std::sin(2.0 * t)};
}

double value_of(const Terms &weights, const Terms &terms) {
  double sum = 0.0;
  for (std::size_t k = 0; k < kTerms; ++k)
    sum += weights[k] * terms[k];
  return sum;
}

struct Point {
  Terms terms;
  double e;
};

/// Least squares by Gauss elimination; the matrix is well conditioned as the points lie nearly all round.
Terms fit(const std::vector<Point> &points, double far_mm, const Terms &before) {
  std::array<std::array<double, kTerms + 1>, kTerms> m{};
  for (const Point &point : points) {
    if (std::abs(point.e - value_of(before, point.terms)) > far_mm)
      continue;
    for (std::size_t r = 0; r < kTerms; ++r) {
      for (std::size_t c = 0; c < kTerms; ++c)
        m[r][c] += point.terms[r] * point.terms[c];
      m[r][kTerms] += point.terms[r] * point.e;
    }
  }
  for (std::size_t r = 0; r < kTerms; ++r) {
    if (m[r][r] <= 0.0)
      return before;
    for (std::size_t below = r + 1; below < kTerms; ++below) {
      const double share = m[below][r] / m[r][r];
      for (std::size_t c = r; c <= kTerms; ++c)
        m[below][c] -= share * m[r][c];
    }
  }
  Terms weights{};
  for (std::size_t r = kTerms; r-- > 0;) {
    double rest = m[r][kTerms];
    for (std::size_t c = r + 1; c < kTerms; ++c)
      rest -= m[r][c] * weights[c];
    weights[r] = rest / m[r][r];
  }
  return weights;
}

} // namespace

SlowWaves::SlowWaves(std::size_t columns) {
  for (std::size_t i = 0; i < columns; ++i)
    terms_.push_back(terms_at(i, columns));
}

std::vector<float> SlowWaves::taken_out_of(std::span<const float> e) const {
  std::vector<float> rest(e.begin(), e.end());
  const auto known = std::count_if(e.begin(), e.end(), [](float value) { return !std::isnan(value); });
  if (static_cast<double>(known) < kLeastRound * static_cast<double>(e.size()) || e.size() < 4 * kTerms)
    return rest;
  std::vector<Point> points;
  for (std::size_t i = 0; i < e.size(); i += std::max<std::size_t>(1, e.size() / kMostColumns))
    if (!std::isnan(e[i]))
      points.push_back({terms_[i], e[i]});

  Terms weights = fit(points, std::numeric_limits<double>::infinity(), {});
  for (int round = 1; round < kRounds; ++round) {
    std::vector<double> off;
    for (const Point &point : points)
      off.push_back(point.e - value_of(weights, point.terms));
    // Floats keep a row from being exact; half a nanometre of grace keeps every point of a smooth one.
    weights = fit(points, kFar * robust_deviation(std::move(off)) + 5e-7, weights);
  }
  for (std::size_t i = 0; i < rest.size(); ++i)
    rest[i] = static_cast<float>(e[i] - value_of(weights, terms_[i]));
  return rest;
}

} // namespace asperity
