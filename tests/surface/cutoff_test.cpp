// Cutoff tables, setting classes, grades, and what fits into a short feature.
#include "asperity/surface/cutoff.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {

constexpr double kCutoffs_mm[] = {0.08, 0.25, 0.8, 2.5, 8}, kLengths_mm[] = {0.4, 1.25, 4, 12.5, 40};

/// Just inside each row's upper end, on it, and just beyond.
void expect_rows(MeasuringSettings (*choose)(double), const double (&ends)[4]) {
  for (int row = 0; row < 4; ++row) {
    EXPECT_EQ(choose(ends[row] * 0.999).cutoff_mm, kCutoffs_mm[row]);
    EXPECT_EQ(choose(ends[row]).cutoff_mm, kCutoffs_mm[row]);
    EXPECT_EQ(choose(ends[row] * 1.001).cutoff_mm, kCutoffs_mm[row + 1]);
    EXPECT_EQ(choose(ends[row]).evaluation_mm, kLengths_mm[row]);
  }
  EXPECT_EQ(choose(0).cutoff_mm, 0.08);
  EXPECT_EQ(choose(1e6).cutoff_mm, 8);
}

} // namespace

TEST(Cutoff, NonPeriodicByIso4288) {
  expect_rows(settings_by_ra, {0.02, 0.1, 2, 10}); // ISO 4288:1996 table 1
  expect_rows(settings_by_rz, {0.1, 0.5, 10, 50}); // ISO 4288:1996 table 2
}

TEST(Cutoff, PeriodicByMeanWidthInIso4288) {
  expect_rows(settings_by_rsm, {0.04, 0.13, 0.4, 1.3}); // ISO 4288:1996 table 3
  for (double rsm = 0.0131; rsm < 4; rsm *= 1.01)       // pitch over cutoff never above 0.52
    EXPECT_LE(rsm / settings_by_rsm(rsm).cutoff_mm, 0.5201);
}

TEST(Cutoff, ByUpperLimitInIso21920) {
  expect_rows(settings_by_ra_limit, {0.02, 0.1, 2, 10}); // ISO 21920-3:2021, course sheet on its defaults
  expect_rows(settings_by_rz_limit, {0.16, 0.8, 16, 80});
}

TEST(Cutoff, SettingClassesMatchIso3274) {
  // ISO 3274:1996: cutoff ratio (rounded in the standard), tip radius, point spacing.
  constexpr double kRatio[] = {30, 100, 300, 300, 300}, kTip_um[] = {2, 2, 2, 5, 10};
  constexpr double kSpacing_um[] = {0.5, 0.5, 0.5, 1.5, 5}, kShort_um[] = {2.5, 2.5, 2.5, 8, 25};
  for (int i = 0; i < 5; ++i) {
    const MeasuringSettings s = settings_of(static_cast<SettingClass>(i));
    EXPECT_EQ(s.cutoff_mm, kCutoffs_mm[i]);
    EXPECT_EQ(s.evaluation_mm, kLengths_mm[i]);
    EXPECT_NEAR(s.short_mm * 1e3, kShort_um[i], 1e-12);
    EXPECT_NEAR(s.cutoff_mm / s.short_mm, kRatio[i], 0.07 * kRatio[i]); // 32 is called 30, 312.5 and 320 300
    EXPECT_EQ(s.tip_radius_um, kTip_um[i]);
    EXPECT_NEAR(s.point_spacing_mm * 1e3, kSpacing_um[i], 1e-12);
    EXPECT_EQ(s.bandwidth().cutoff_mm, s.cutoff_mm);
  }
}

TEST(Cutoff, BluntTipOnRoughClassThree) {
  EXPECT_EQ(largest_tip_radius_um(SettingClass::sc3, 0.4, 2.9), 2);
  EXPECT_EQ(largest_tip_radius_um(SettingClass::sc3, 0.6, 2.9), 5);
  EXPECT_EQ(largest_tip_radius_um(SettingClass::sc3, 0.4, 3.1), 5);
  EXPECT_EQ(largest_tip_radius_um(SettingClass::sc2, 0.6, 3.1), 2);
}

TEST(Grade, LimitsOfIso1302AreUpperLimits) {
  // ISO 1302:1992: N1..N12 in micrometres; the micro-inch column beside it is 1, 2, 4 ... 2000.
  constexpr double kLimits_um[] = {0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25, 50};
  constexpr double kLimits_uin[] = {1, 2, 4, 8, 16, 32, 63, 125, 250, 500, 1000, 2000};
  for (int grade = 1; grade <= 12; ++grade) {
    EXPECT_EQ(grade_limit_um(grade), kLimits_um[grade - 1]);
    EXPECT_NEAR(grade_limit_um(grade) / 0.0254, kLimits_uin[grade - 1], 0.02 * kLimits_uin[grade - 1]);
    EXPECT_EQ(roughness_grade(kLimits_um[grade - 1]), grade);
    EXPECT_EQ(roughness_grade(kLimits_um[grade - 1] * 0.99), grade);
  }
  EXPECT_EQ(roughness_grade(7.4), 10); // trade answer: N10, not N9
  EXPECT_FALSE(roughness_grade(50.1).has_value());
}

TEST(Evaluation, OpenProfileLosesHalfACutoffAtEachEnd) {
  // Instruments traverse 5.6 mm for a 4 mm evaluation, seven cutoffs; six are the least.
  const MeasuringSettings s = settings_of(SettingClass::sc3);
  EXPECT_FALSE(evaluation_fit(5.6, ProfileEnds::open, s).too_short());
  EXPECT_EQ(evaluation_fit(4.8, ProfileEnds::open, s).sections, 5);
  EXPECT_EQ(evaluation_fit(4.7, ProfileEnds::open, s).sections, 4);
  EXPECT_TRUE(evaluation_fit(4.7, ProfileEnds::open, s).too_short());
  EXPECT_EQ(evaluation_fit(1.5, ProfileEnds::open, s).sections, 0);
  EXPECT_DOUBLE_EQ(evaluation_fit(4.8, ProfileEnds::open, s).dropped_mm, 0.4);
}

TEST(Evaluation, ClosedProfileLosesNothing) {
  const MeasuringSettings s = settings_of(SettingClass::sc3);
  EXPECT_EQ(evaluation_fit(4.0, ProfileEnds::closed, s).sections, 5);
  EXPECT_EQ(evaluation_fit(3.9, ProfileEnds::closed, s).sections, 4);
  EXPECT_EQ(evaluation_fit(4.0, ProfileEnds::closed, s).dropped_mm, 0);
}
