// A whole reading: filters, ends, sections and what is said when a feature is too short.
#include "asperity/surface/stylus_reading.h"

#include "asperity/surface/kinematic.h"
#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {

/// Cusps of height 1 um every 0.2 mm, 400 samples each: 0.5 um apart, as fine as class 3 asks.
std::vector<double> cusps(std::size_t periods) { return sampled(parabolic_cusp(0.001), 400, periods); }
constexpr double kSpacing_mm = 0.0005;
constexpr double kReading = 2e-3; // short sections cut cusps in the middle; peaks miss half a sample

} // namespace

TEST(StylusReading, LongTraceReadsTheCuspInFiveSections) {
  // Pitch a quarter of the cutoff: the filter takes nothing (Ra 0.2566 of the height).
  const auto r = read_profile(cusps(28), kSpacing_mm, ProfileEnds::open, settings_of(SettingClass::sc3));
  EXPECT_EQ(r.parameters.sections, 5);
  EXPECT_FALSE(r.fit.too_short());
  EXPECT_FALSE(r.spacing_coarse);
  EXPECT_NEAR(r.parameters.ra_mm, cusp_ra_mm(0.001), kReading * 0.001);
  EXPECT_NEAR(r.parameters.rsm_mm, 0.2, 0.0005);
}

TEST(StylusReading, ClosedWallOfFourMillimetresIsEnoughAndOpenOneIsNot) {
  const auto settings = settings_of(SettingClass::sc3);
  const auto closed = read_profile(cusps(20), kSpacing_mm, ProfileEnds::closed, settings);
  EXPECT_EQ(closed.parameters.sections, 5);
  const auto open = read_profile(cusps(20), kSpacing_mm, ProfileEnds::open, settings);
  EXPECT_TRUE(open.fit.too_short());
  EXPECT_EQ(open.parameters.sections, 4);
  EXPECT_NEAR(open.parameters.ra_mm, closed.parameters.ra_mm, kReading * 0.001);
}

TEST(StylusReading, FeatureShorterThanACutoffIsReadWholeAndSaysSo) {
  const auto r = read_profile(cusps(3), kSpacing_mm, ProfileEnds::open, settings_of(SettingClass::sc3));
  EXPECT_EQ(r.fit.sections, 0);
  EXPECT_TRUE(r.fit.too_short());
  EXPECT_EQ(r.parameters.sections, 1);
  EXPECT_GT(r.parameters.ra_mm, 0);
}

TEST(StylusReading, WaveAndSlopeOfTheFormDoNotReachTheNumber) {
  // A 3 um wave twenty cutoffs long keeps 0.17 % in the roughness, a slope nothing.
  auto heights = cusps(160);
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const double x = static_cast<double>(i) * kSpacing_mm;
    heights[i] += 0.003 * std::sin(2 * kPi * x / 16) + 0.001 * x;
  }
  const auto r = read_profile(heights, kSpacing_mm, ProfileEnds::open, settings_of(SettingClass::sc3));
  const double wave_left = 0.003 * (1 - gaussian_transmission(16, 0.8));
  EXPECT_NEAR(r.parameters.ra_mm, cusp_ra_mm(0.001), wave_left + kReading * 0.001);
}

TEST(StylusReading, CoarseSamplesAreReported) {
  const auto r =
      read_profile(sampled(sine(0.001), 20, 100), 0.01, ProfileEnds::closed, settings_of(SettingClass::sc3));
  EXPECT_TRUE(r.spacing_coarse);
}
