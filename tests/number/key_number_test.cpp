// Key numbers of a hand-made outcome equal what was put into it.
#include "asperity/number/key_number.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <limits>
#include <set>

namespace asperity {
namespace {

using test_support::rim_outcome;

/// Doubles that were stored as floats.
constexpr double kFloat = 1e-5;

double value_of(const std::vector<KeyNumber> &numbers, std::string_view id) {
  const KeyNumber *number = find_number(numbers, id);
  EXPECT_NE(number, nullptr) << id;
  return number ? number->value : std::numeric_limits<double>::quiet_NaN();
}

TEST(KeyNumbers, SayWhatTheOutcomeHolds) {
  const std::vector<KeyNumber> numbers = key_numbers(rim_outcome());
  EXPECT_DOUBLE_EQ(value_of(numbers, "time_s"), 125.0);
  EXPECT_DOUBLE_EQ(value_of(numbers, "checks_missed"), 1.0);
  EXPECT_DOUBLE_EQ(value_of(numbers, "dangers"), 1.0);
  EXPECT_DOUBLE_EQ(value_of(numbers, "flaws"), 2.0);
  EXPECT_NEAR(value_of(numbers, "peak_side_force_N"), 23.0, kFloat);
  EXPECT_NEAR(value_of(numbers, "peak_tip_bend_um"), 31.0, kFloat);
  EXPECT_NEAR(value_of(numbers, "peak_chip_temperature_C"), 84.0, kFloat);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/diameter_mm"), 62.018);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/lip_mm"), test_support::kLip_mm);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/witness_depth_um"), 6.0);
  EXPECT_NEAR(value_of(numbers, "rim/roundness_um"), 6.0, 1e-9);
  EXPECT_NEAR(value_of(numbers, "rim/uncut_percent"), 4.3, 1e-9);
}

TEST(KeyNumbers, AFlawThatIsNotThereIsNought) {
  const std::vector<KeyNumber> numbers = key_numbers(rim_outcome());
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/level_step_um"), 0.0);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/gouge_um"), 0.0);
}

TEST(KeyNumbers, WhatDoesNotApplyIsLeftOut) {
  Outcome outcome = rim_outcome(); // roughness not read, grip and clamping force not given
  std::vector<KeyNumber> numbers = key_numbers(outcome);
  EXPECT_EQ(find_number(numbers, "rim/ra_um"), nullptr);
  EXPECT_EQ(find_number(numbers, "break_margin"), nullptr);
  EXPECT_EQ(find_number(numbers, "slip_margin"), nullptr);
  outcome.features[0].cut_share = 0.0;
  outcome.cut.samples.clear();
  numbers = key_numbers(outcome);
  EXPECT_EQ(find_number(numbers, "rim/diameter_mm"), nullptr);
  EXPECT_EQ(find_number(numbers, "rim/lip_mm"), nullptr);
  EXPECT_EQ(find_number(numbers, "peak_side_force_N"), nullptr);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/uncut_percent"), 100.0);
}

TEST(KeyNumbers, MarginsFollowTheirLaws) {
  Outcome outcome = rim_outcome();
  outcome.job.blank.diameter_mm = 20.0;
  outcome.job.blank.z_top_mm = 14.0;
  outcome.job.holding.grip_z_mm = 0.0;
  outcome.job.holding.clamp_force_N = 500.0;
  outcome.job.material.friction = 0.25;
  outcome.job.material.break_stress_MPa = 25.0;
  const std::vector<KeyNumber> numbers = key_numbers(outcome);
  // derived: W = pi d^3/32 = 785.398 mm^3 for d = 20; stress = 2 * (2 * 23 N) * 3.5 mm / W, at a tip height
  // of 3.5 mm and no engaged length; margin = 25 MPa over that. Slip: 0.25 * 500 N over 23 N.
  EXPECT_NEAR(value_of(numbers, "break_margin"), 25.0 * 785.39816 / (2.0 * 46.0 * 3.5), 1e-4);
  EXPECT_NEAR(value_of(numbers, "slip_margin"), 125.0 / 23.0, 1e-6);
}

TEST(KeyNumbers, RoughnessIsReadAlongAndAcross) {
  Outcome outcome = rim_outcome();
  FeatureRoughness roughness;
  roughness.measured = true;
  roughness.ra_um = 0.8;
  roughness.rz_um = 4.0;
  roughness.ra_band.high_um = 4.1;
  roughness.along.profile_mm = roughness.across.profile_mm = {0.0};
  roughness.along.reading.parameters.ra_mm = 2e-4;
  roughness.across.reading.parameters.ra_mm = 8e-4;
  roughness.across.reading.parameters.rz_mm = 4e-3;
  outcome.roughness = {roughness};
  const std::vector<KeyNumber> numbers = key_numbers(outcome);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/ra_um"), 0.8);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/ra_high_um"), 4.1);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/ra_along_um"), 0.2);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/ra_across_um"), 0.8);
  EXPECT_DOUBLE_EQ(value_of(numbers, "rim/rz_across_um"), 4.0);
}

TEST(KeyNumbers, IdsAreUniqueEvenWhereTwoFeaturesShareAName) {
  Outcome outcome = rim_outcome();
  outcome.job.features.push_back(outcome.job.features[0]);
  outcome.charts.push_back(outcome.charts[0]);
  outcome.features.push_back(outcome.features[0]);
  std::set<std::string> ids;
  for (const KeyNumber &number : key_numbers(outcome))
    EXPECT_TRUE(ids.insert(number.id).second) << number.id;
  EXPECT_EQ(ids.count("rim #2/diameter_mm"), 1u);
}

TEST(KeyNumbers, ARunThatDidNotEndHasNone) {
  Outcome outcome = rim_outcome();
  outcome.status = Status::cancelled;
  EXPECT_TRUE(key_numbers(outcome).empty());
}

TEST(Merit, GrowsTowardsTheBetterValue) {
  KeyNumber number{"x", "", "", "mm", 62.1, Better::nearer_wanted, 62.0};
  EXPECT_NEAR(merit(number), -0.1, 1e-12);
  number.value = 61.9;
  EXPECT_NEAR(merit(number), -0.1, 1e-12);
  number.better = Better::lower;
  EXPECT_DOUBLE_EQ(merit(number), -61.9);
  number.better = Better::higher;
  EXPECT_DOUBLE_EQ(merit(number), 61.9);
  number.better = Better::neither;
  EXPECT_DOUBLE_EQ(merit(number), 0.0);
}

} // namespace
} // namespace asperity
