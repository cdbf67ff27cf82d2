// Parameters of one exact period against their closed forms (moments of the definitions in ISO 4287 / ISO
// 21920-2: Ra = mean |z|, Rq rms, Rsk and Rku third and fourth moments over Rq^3, Rq^4), each derived by
// integration.
#include "asperity/surface/profile_parameters.h"

#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

constexpr std::size_t kSamples = 100000;
/// Midpoints miss integrals by 1/N^2 per kink; the printed values carry seven digits.
constexpr double kMoment = 1e-6;
/// A sharp peak may lie half a sample beside the nearest midpoint: up to 2 heights / N for slopes met here.
constexpr double kPeak = 2.5 / kSamples;

struct Expected {
  double ra, rq, rp, rv, rsk, rku;
};

ProfileParameters parameters_of(const Shape &shape) {
  return profile_parameters(about_mean(sampled(shape, kSamples)), 1.0 / kSamples);
}

void expect_parameters(const Shape &shape, const Expected &expected, double moment = kMoment) {
  const ProfileParameters p = parameters_of(shape);
  EXPECT_NEAR(p.ra_mm, expected.ra, moment);
  EXPECT_NEAR(p.rq_mm, expected.rq, moment);
  EXPECT_NEAR(p.rp_mm, expected.rp, kPeak + moment);
  EXPECT_NEAR(p.rv_mm, expected.rv, kPeak + moment);
  EXPECT_NEAR(p.rz_mm, expected.rp + expected.rv, 2 * kPeak + moment);
  EXPECT_DOUBLE_EQ(p.rt_mm, p.rz_mm);
  EXPECT_DOUBLE_EQ(p.rzx_mm, p.rz_mm);
  EXPECT_NEAR(p.rsk, expected.rsk, 5 * moment);
  EXPECT_NEAR(p.rku, expected.rku, 10 * moment);
}

/// Quantile of the normal distribution by halving: the reference needs no table.
double normal_quantile(double share) {
  double low = -10, high = 10;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (0.5 * std::erfc(-middle / std::sqrt(2.0)) < share ? low : high) = middle;
  }
  return (low + high) / 2;
}

} // namespace

TEST(ClosedForm, Sine) { expect_parameters(sine(1), {2 / kPi, std::sqrt(0.5), 1, 1, 0, 1.5}); }

TEST(ClosedForm, TriangleAndSawtooth) {
  expect_parameters(triangle(1), {0.5, 1 / std::sqrt(3.0), 1, 1, 0, 1.8});
  expect_parameters(sawtooth(1), {0.5, 1 / std::sqrt(3.0), 1, 1, 0, 1.8});
}

TEST(ClosedForm, SquareWave) {
  expect_parameters([](double u) { return u < 0.5 ? 1.0 : -1.0; }, {1, 1, 1, 1, 0, 1});
}

TEST(ClosedForm, PulsesByBernoulliMoments) {
  expect_parameters(pulse(1, 0.25), {0.375, 0.4330127, 0.75, 0.25, 1.1547005, 2.3333333});
  expect_parameters(pulse(1, 0.10), {0.18, 0.3, 0.9, 0.1, 2.6666667, 8.1111111});
  for (const double d : {0.05, 0.3, 0.6, 0.9}) {
    const double q = d * (1 - d);
    expect_parameters(pulse(1, d), {2 * q, std::sqrt(q), 1 - d, d, (1 - 2 * d) / std::sqrt(q), 1 / q - 3});
  }
}

TEST(ClosedForm, ParabolicCuspsUpAndDown) {
  const double ra = 4 / (9 * std::sqrt(3.0)), rq = 2 / (3 * std::sqrt(5.0));
  const double rsk = 2 * std::sqrt(5.0) / 7, rku = 15.0 / 7;
  expect_parameters(parabolic_cusp(1), {ra, rq, 2.0 / 3, 1.0 / 3, rsk, rku});
  expect_parameters(parabolic_cusp(-1), {ra, rq, 1.0 / 3, 2.0 / 3, -rsk, rku});
  EXPECT_NEAR(parameters_of(parabolic_cusp(1)).rz_mm / ra, 3.897114, 1e-4); // not 4: 9 sqrt 3 / 4
}

TEST(ClosedForm, RectifiedSine) {
  // Skewness and kurtosis are printed to five places.
  constexpr double kPrinted = 5e-6;
  const ProfileParameters p = parameters_of(rectified_sine(1));
  EXPECT_NEAR(p.ra_mm, 0.2680343, kMoment);
  EXPECT_NEAR(p.rq_mm, 0.3077585, kMoment);
  EXPECT_NEAR(p.rp_mm, 0.3633802, kPeak);
  EXPECT_NEAR(p.rv_mm, 0.6366198, kPeak);
  EXPECT_NEAR(p.rsk, -0.49716, kPrinted);
  EXPECT_NEAR(p.rku, 1.93153, kPrinted);
}

TEST(ClosedForm, GaussianHeights) {
  // Quantiles at midpoints lack the tails beyond 1 / 2N: kurtosis by 2e-3, the rest less.
  constexpr double kTails = 2e-3;
  std::vector<double> heights;
  for (std::size_t i = 0; i < kSamples; ++i)
    heights.push_back(normal_quantile((static_cast<double>(i) + 0.5) / kSamples));
  const ProfileParameters p = profile_parameters(heights, 1.0);
  EXPECT_NEAR(p.ra_mm / p.rq_mm, std::sqrt(2 / kPi), kTails);
  EXPECT_NEAR(p.rsk, 0, kTails);
  EXPECT_NEAR(p.rku, 3, kTails);
}

TEST(ClosedForm, CircularArcCusps) {
  // Exact arcs of radius 1: pitch, height, then Ra, Rq, Rp over the height, skewness, kurtosis; derived by
  // integration. The shallow-pitch rows agree with the 1.6 % bound of [Qu & Shih 2003] for f / r < 0.5.
  struct Row {
    double pitch, height, ra, rq, rp, rsk, rku;
  };
  constexpr Row kRows[] = {
      {0.1, 0.0012507822, 0.2565680, 0.2981157, 0.666750, 0.639288, 2.143526},
      {0.25, 0.0078432584, 0.2563975, 0.2979742, 0.667191, 0.641463, 2.147075},
      {0.5, 0.0317541634, 0.2557632, 0.2974467, 0.668812, 0.649469, 2.160268},
      {1.0, 0.1339745962, 0.2527416, 0.2949168, 0.676143, 0.685874, 2.222946},
      {1.5, 0.3385621722, 0.2448105, 0.2881332, 0.693095, 0.771185, 2.387456},
      {2.0, 1.0, 0.1813029, 0.2231959, 0.784691, 1.151342, 3.493943},
  };
  for (const Row &row : kRows) {
    // The last row's arcs meet upright: a peak half a sample off is lower by sqrt(2 / N), integrals by
    // N^-1.5.
    const double peak = row.pitch == 2.0 ? std::sqrt(4.0 / kSamples) : 5.0 / kSamples;
    const double moment = row.pitch == 2.0 ? 1e-5 : kMoment;
    const ProfileParameters p = parameters_of(arc_cusp(row.pitch));
    EXPECT_NEAR(p.ra_mm / row.height, row.ra, moment);
    EXPECT_NEAR(p.rq_mm / row.height, row.rq, moment);
    EXPECT_NEAR(p.rp_mm / row.height, row.rp, peak);
    EXPECT_NEAR(p.rz_mm / row.height, 1, peak);
    EXPECT_NEAR(p.rsk, row.rsk, 10 * moment);
    EXPECT_NEAR(p.rku, row.rku, 30 * moment);
  }
}
