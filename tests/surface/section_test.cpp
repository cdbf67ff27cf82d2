// Sections, averaging rules and profile elements: ISO 4287:1997 with ISO 4288:1996, and ISO 21920-2:2021.
#include "asperity/surface/profile_parameters.h"

#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

#include <random>

using namespace asperity;

namespace {

constexpr double kExact = 1e-12; // a few roundings

/// Five sections of 100 samples of +-1, one of them with a single peak 10 higher.
std::vector<double> one_spike() {
  std::vector<double> heights;
  for (int i = 0; i < 500; ++i)
    heights.push_back(i % 2 ? -1 : 1);
  heights[250] += 10;
  return heights;
}

} // namespace

TEST(Sections, RzIsTheMeanOfFiveAndRtSpansThemAll) {
  // Rz = (4 x 2 + 12) / 5 = 4.0, Rt = 12, largest section 12; by the definitions of both standards.
  for (const Averaging averaging : {Averaging::iso_21920, Averaging::iso_4287}) {
    const ProfileParameters p = profile_parameters(one_spike(), 0.008, {0.8, 5, averaging});
    EXPECT_EQ(p.sections, 5);
    EXPECT_NEAR(p.rz_mm, 4, kExact);
    EXPECT_NEAR(p.rp_mm, 3, kExact);
    EXPECT_NEAR(p.rv_mm, 1, kExact);
    EXPECT_NEAR(p.rt_mm, 12, kExact);
    EXPECT_NEAR(p.rzx_mm, 12, kExact);
  }
}

TEST(Sections, AveragingRulesAgreeOnRaAndDifferOnRq) {
  // Ra is a mean of means; Rq over the whole is a root of a mean of squares, here sqrt((499 + 121) / 500),
  // against the mean of four ones and sqrt((99 + 121) / 100).
  const auto whole = profile_parameters(one_spike(), 0.008, {0.8, 5, Averaging::iso_21920});
  const auto each = profile_parameters(one_spike(), 0.008, {0.8, 5, Averaging::iso_4287});
  EXPECT_NEAR(whole.ra_mm, 510.0 / 500, kExact);
  EXPECT_NEAR(each.ra_mm, 510.0 / 500, kExact);
  EXPECT_NEAR(whole.rq_mm, std::sqrt(620.0 / 500), kExact);
  EXPECT_NEAR(each.rq_mm, (4 + std::sqrt(220.0 / 100)) / 5, kExact);
  // Third and fourth moments by hand: sums 1331 - 1 and 14641 + 499 over the whole.
  EXPECT_NEAR(whole.rsk, 1330.0 / 500 / std::pow(1.24, 1.5), kExact);
  EXPECT_NEAR(whole.rku, 15140.0 / 500 / (1.24 * 1.24), kExact);
  EXPECT_NEAR(each.rsk, 1330.0 / 100 / std::pow(2.2, 1.5) / 5, kExact);
  EXPECT_NEAR(each.rku, (4 + 14740.0 / 100 / (2.2 * 2.2)) / 5, kExact);
}

TEST(Sections, AsManyAsFitAreTakenFromTheMiddle) {
  EXPECT_EQ(sections_that_fit(5.6, 0.8), 5);
  EXPECT_EQ(sections_that_fit(2.4, 0.8), 3); // 2.4 / 0.8 rounds to 2.9999999999999996
  EXPECT_EQ(sections_that_fit(2.39, 0.8), 2);
  EXPECT_EQ(sections_that_fit(0.5, 0.8), 0);
  // Seven sections' worth, the outer two higher: only the middle five count.
  std::vector<double> heights(700);
  for (std::size_t i = 0; i < 700; ++i)
    heights[i] = (i % 2 ? -1.0 : 1.0) * (i < 100 || i >= 600 ? 50 : 1);
  EXPECT_NEAR(profile_parameters(heights, 0.008, {0.8, 5, Averaging::iso_21920}).rt_mm, 2, kExact);
}

TEST(Sections, ShortOrEmptyProfileIsOneSectionOrNone) {
  const auto p = profile_parameters(std::vector<double>{1, -1, 1, -1}, 0.01, {0.8, 5, Averaging::iso_4287});
  EXPECT_EQ(p.sections, 1);
  EXPECT_NEAR(p.rz_mm, 2, kExact);
  EXPECT_EQ(profile_parameters(std::vector<double>{}, 0.01).sections, 0);
  const auto flat = profile_parameters(std::vector<double>(10, 0.0), 0.01);
  EXPECT_EQ(flat.rsk, 0);
  EXPECT_EQ(flat.rsm_mm, 0);
}

TEST(Elements, AnyOneShapePeriodHasItsPitchAsMeanWidth) {
  // Mean spacing of crossings in pairs; exact but for the straight line between samples. [derived]
  constexpr double kSample = 1e-3; // of the pitch: 1000 samples
  for (const Shape &shape : {sine(1), triangle(1), sawtooth(1), parabolic_cusp(1), parabolic_cusp(-1),
                             rectified_sine(1), pulse(1, 0.25), arc_cusp(1.5)}) {
    const auto heights = about_mean(sampled(shape, 1000, 20));
    for (const Averaging averaging : {Averaging::iso_21920, Averaging::iso_4287}) {
      const auto p = profile_parameters(heights, 0.0002, {0.8, 5, averaging});
      EXPECT_NEAR(p.rsm_mm, 0.2, 0.2 * kSample);
    }
  }
}

TEST(Elements, SmallRipplesOnABigWaveDoNotCount) {
  // A ripple of 4 % on a wave crosses the mean line several times near each crossing; below the 10 % height
  // discrimination it must not split the element.
  std::vector<double> heights;
  for (int i = 0; i < 20000; ++i)
    heights.push_back(std::sin(2 * kPi * i / 2000.0) + 0.04 * std::sin(2 * kPi * i / 37.0));
  // A crossing moves by up to half a ripple: 18 samples at either end of nine elements.
  constexpr double kRipple = 2 * 18.0 / (9 * 2000);
  EXPECT_NEAR(mean_element_width_mm(heights, 0.0002, {0.1, 0.1, 0}), 0.4, 0.4 * kRipple);
  // Without discrimination the ripple, twice as steep as the wave, makes elements of its own.
  EXPECT_LT(mean_element_width_mm(heights, 0.0002, {}), 0.9 * 0.4);
}

TEST(Elements, NarrowSpikesDoNotCount) {
  // A one-sample needle through the mean line, tall but narrower than 1 % of the section.
  auto heights = sampled(sine(1), 2000, 10);
  for (std::size_t i = 500; i < heights.size(); i += 2000)
    heights[i] = -1;
  const auto p = profile_parameters(heights, 0.0002, {0.8, 5, Averaging::iso_21920});
  EXPECT_NEAR(p.rsm_mm, 0.4, 0.4 * 1e-3);
}

TEST(Elements, MirroringTheProfileChangesNothing) {
  std::mt19937 random(7);
  std::normal_distribution<double> noise;
  std::vector<double> heights;
  double walk = 0;
  for (int i = 0; i < 4000; ++i)
    heights.push_back(walk = 0.9 * walk + noise(random));
  const std::vector<double> mirrored(heights.rbegin(), heights.rend());
  const Discrimination least{0.5, 0.8, 0.01};
  EXPECT_NEAR(mean_element_width_mm(heights, 0.001, least), mean_element_width_mm(mirrored, 0.001, least),
              1e-12);
}
