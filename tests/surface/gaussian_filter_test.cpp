// The profile filter against the weighting and transmission of ISO 16610-21:2011 and against the end effects
// that follow from a kernel scaled to unit area.
#include "asperity/surface/gaussian_filter.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

using namespace asperity;

namespace {

/// The kernel cut off at one cutoff misses 9.5e-8 of its area; the table is printed to seven digits.
constexpr double kTruncation = 3e-7;

struct Transmission {
  double ratio, mean_line; ///< wavelength over cutoff
};
/// 2^-((lc / l)^2), ISO 16610-21:2011 clause 4.2.
constexpr Transmission kTable[] = {{0.25, 1.5259e-5}, {0.3, 4.5209e-4}, {0.4, 0.0131390}, {0.5, 0.0625},
                                   {0.6, 0.1458161},  {0.8, 0.3385639}, {1, 0.5},         {1.25, 0.6417129},
                                   {1.5, 0.7348672},  {2, 0.8408964},   {2.5, 0.8950251}, {3, 0.9258747},
                                   {5, 0.9726549},    {10, 0.9930925}};

std::vector<double> sine_line(std::size_t count, double samples_a_wave) {
  std::vector<double> heights;
  for (std::size_t i = 0; i < count; ++i)
    heights.push_back(std::sin(2 * kPi * static_cast<double>(i) / samples_a_wave));
  return heights;
}

/// Amplitude in phase with sine_line over a stretch of whole waves.
double amplitude(const std::vector<double> &line, double samples_a_wave, std::size_t begin, std::size_t end) {
  double sum = 0;
  for (std::size_t i = begin; i < end; ++i)
    sum += line[i] * std::sin(2 * kPi * static_cast<double>(i) / samples_a_wave);
  return 2 * sum / static_cast<double>(end - begin);
}

} // namespace

TEST(GaussianFilter, WeightMatchesTheStandard) {
  // s(x) lc at x / lc = 0, 0.1, 0.25, 0.5, 1, from the formula of clause 4.1.
  EXPECT_NEAR(gaussian_weight_per_mm(0, 1), 2.128934, 5e-7);
  EXPECT_NEAR(gaussian_weight_per_mm(0.1, 1), 1.846391, 5e-7);
  EXPECT_NEAR(gaussian_weight_per_mm(0.25, 1), 0.874323, 5e-7);
  EXPECT_NEAR(gaussian_weight_per_mm(0.5, 1), 0.0605621, 5e-8);
  EXPECT_NEAR(gaussian_weight_per_mm(1, 1), 1.394e-6, 5e-10);
  EXPECT_NEAR(gaussian_weight_per_mm(0.08, 0.8), 1.846391 / 0.8, 1e-6);
}

TEST(GaussianFilter, KernelAreaWithinItsReach) {
  EXPECT_NEAR(gaussian_kernel_area(0.5), 0.99237464, 5e-9);
  EXPECT_NEAR(gaussian_kernel_area(0.6), 0.99863460, 5e-9);
  EXPECT_NEAR(gaussian_kernel_area(0.75), 0.99993728, 5e-9);
  EXPECT_NEAR(gaussian_kernel_area(1.0), 0.9999999052, 5e-11);
}

TEST(GaussianFilter, SampledWeightsAddUpToOneAndFollowTheKernel) {
  const GaussianFilter filter(0.8, 0.0005);
  ASSERT_EQ(filter.weights().size(), 1601u);
  const double tail = std::accumulate(filter.weights().begin() + 1, filter.weights().end(), 0.0);
  EXPECT_NEAR(filter.weights()[0] + 2 * tail, 1, 1e-12);
  for (const std::size_t k : {0u, 160u, 400u, 800u})
    EXPECT_NEAR(filter.weights()[k], gaussian_weight_per_mm(0.0005 * static_cast<double>(k), 0.8) * 0.0005,
                2e-7 * filter.weights()[0]); // the truncated area comes back by scaling
}

TEST(GaussianFilter, ClosedProfileTransmitsByTheTable) {
  for (const Transmission &row : kTable) {
    const std::size_t wave = 200, count = 40 * wave;
    const GaussianFilter filter(1.0, row.ratio / static_cast<double>(wave));
    const auto heights = sine_line(count, static_cast<double>(wave));
    const auto mean = filter.mean_line(heights, ProfileEnds::closed);
    const auto rough = filter.roughness(heights, ProfileEnds::closed);
    EXPECT_NEAR(amplitude(mean, wave, 0, count), row.mean_line, kTruncation) << row.ratio;
    EXPECT_NEAR(amplitude(rough, wave, 0, count), 1 - row.mean_line, kTruncation) << row.ratio;
    EXPECT_NEAR(gaussian_transmission(row.ratio, 1), row.mean_line, 6e-8) << row.ratio;
  }
}

TEST(GaussianFilter, OpenProfileTransmitsByTheTableAwayFromItsEnds) {
  for (const Transmission &row : kTable) {
    const std::size_t wave = 200, dropped = wave * static_cast<std::size_t>(std::ceil(1 / row.ratio));
    const std::size_t count = 2 * dropped + 10 * wave;
    const GaussianFilter filter(1.0, row.ratio / static_cast<double>(wave));
    const auto mean = filter.mean_line(sine_line(count, static_cast<double>(wave)), ProfileEnds::open);
    EXPECT_NEAR(amplitude(mean, wave, dropped, count - dropped), row.mean_line, kTruncation) << row.ratio;
  }
}

TEST(GaussianFilter, TruncationAtOneCutoffCostsFourInAHundredMillion) {
  // SciPy, 5.6 mm trace at 0.5 um, cutoff 0.8, wave 0.8, kernel cut at one cutoff: 0.49999996.
  const GaussianFilter filter(0.8, 0.0005);
  const auto mean = filter.mean_line(sine_line(11200, 1600), ProfileEnds::open);
  EXPECT_NEAR(amplitude(mean, 1600, 1600, 9600), 0.49999996, 1e-8);
}

TEST(GaussianFilter, ConstantStaysFreeOfRoughnessToTheLastSample) {
  const std::vector<double> flat(1000, 3.5);
  for (const ProfileEnds ends : {ProfileEnds::open, ProfileEnds::closed})
    for (const double z : GaussianFilter(0.8, 0.004).roughness(flat, ends))
      ASSERT_NEAR(z, 0, 1e-13);
}

TEST(GaussianFilter, RampIsStraightBeyondACutoffAndBendsAtItsEnd) {
  // At the end sample a half kernel sits m sigma sqrt(2 / pi) = 0.149517 m lc off. [derived]
  const double spacing = 1e-4;
  std::vector<double> ramp;
  for (int i = 0; i < 40000; ++i)
    ramp.push_back(spacing * i);
  const auto rough = GaussianFilter(1.0, spacing).roughness(ramp, ProfileEnds::open);
  for (std::size_t i = 10001; i < 29999; ++i)
    ASSERT_NEAR(rough[i], 0, 1e-7);
  // The end sample's own weight counts whole, not half: 2.13 dx / lc of the area.
  EXPECT_NEAR(rough.front(), -0.149517, 0.149517 * 2.5 * spacing);
  EXPECT_NEAR(rough.back(), 0.149517, 0.149517 * 2.5 * spacing);
}

TEST(GaussianFilter, ShortFilterTakesNoiseAndLeavesToothMarks) {
  // With ls = 2.5 um a wave of 2.5 um keeps one half, one of 50 um (a tooth mark) all but 0.2 %.
  const double spacing = 0.00025;
  const Bandwidth band{0.8, 0.0025};
  for (const double wave_mm : {0.0025, 0.05}) {
    const double wave = wave_mm / spacing;
    const auto rough = roughness_profile(sine_line(16000, wave), spacing, band, ProfileEnds::closed);
    const double expected =
        gaussian_transmission(wave_mm, 0.0025) * (1 - gaussian_transmission(wave_mm, 0.8));
    EXPECT_NEAR(amplitude(rough, wave, 0, 16000), expected, 1e-6);
  }
}

TEST(GaussianFilter, ClosedProfileShorterThanTheKernelWrapsMoreThanOnce) {
  // One wave round a small bore, cutoff longer than the bore's circumference.
  const GaussianFilter filter(1.0, 0.01);
  const auto mean = filter.mean_line(sine_line(40, 40), ProfileEnds::closed);
  EXPECT_NEAR(amplitude(mean, 40, 0, 40), gaussian_transmission(0.4, 1.0), kTruncation);
}

TEST(GaussianFilter, FloatHeightsGiveTheSameLine) {
  const auto heights = sine_line(500, 73);
  const std::vector<float> narrow(heights.begin(), heights.end());
  const GaussianFilter filter(0.25, 0.01);
  const auto wide = filter.mean_line(heights, ProfileEnds::open);
  const auto from_float = filter.mean_line(narrow, ProfileEnds::open);
  for (std::size_t i = 0; i < wide.size(); ++i)
    ASSERT_NEAR(wide[i], from_float[i], 6e-8); // half a float's last place at 1
}

TEST(GaussianFilter, CutoffBelowTheSpacingAndEmptyProfilesChangeNothing) {
  const GaussianFilter filter(0.0025, 0.01);
  const std::vector<double> heights = {1, -2, 3};
  EXPECT_EQ(filter.mean_line(heights, ProfileEnds::open), heights);
  EXPECT_TRUE(GaussianFilter(0.8, 0.01).mean_line(std::vector<double>{}, ProfileEnds::closed).empty());
}
