// Plans whose differences are known by hand, set side by side.
#include "asperity/compare/comparison.h"

#include "properties/small_job.h"
#include "support/sheave_outcome.h"

#include <array>

namespace asperity {
namespace {

using test::boss_job;
using test::boss_program;
using test::predicted;

constexpr double kMicrometre_mm = 1e-3; // what a lip's height is probed to

Comparison compare_two(const Outcome &a, const Outcome &b) {
  const std::array both{&a, &b};
  return compare(both);
}

const ComparedNumber &row(const Comparison &comparison, std::string_view id) {
  for (const ComparedNumber &number : comparison.numbers)
    if (number.number.id == id)
      return number;
  ADD_FAILURE() << "no row " << id;
  static const ComparedNumber none = [] {
    ComparedNumber empty;
    empty.of.resize(2);
    empty.difference.resize(2);
    return empty;
  }();
  return none;
}

Outcome boss_with_z_error(double error_mm) {
  Job job = boss_job();
  job.effects.zero_error = true;
  job.setup.z_zero_error_mm = error_mm;
  std::get<FloorFeature>(job.features[1]).height = SizeWanted{4.0, 3.95, 4.05};
  return predicted(job, boss_program());
}

// Plane geometry: a cutter that runs 0.1 mm higher leaves a lip 0.1 mm higher and a top 0.1 mm higher.
TEST(Comparison, AZeroErrorOfATenthShowsAsATenthMoreLipAndHeight) {
  const Comparison comparison = compare_two(boss_with_z_error(0.05), boss_with_z_error(0.15));
  const ComparedNumber &lip = row(comparison, "rim/lip_mm");
  ASSERT_TRUE(lip.difference[1]);
  EXPECT_NEAR(lip.of[0]->value, 0.05, kMicrometre_mm);
  EXPECT_NEAR(lip.difference[1]->value, 0.1, kMicrometre_mm);
  EXPECT_EQ(lip.difference[1]->standing, Standing::worse);
  const ComparedNumber &height = row(comparison, "top/height_mm");
  EXPECT_NEAR(height.difference[1]->value, 0.1, 1e-6);
  EXPECT_EQ(height.difference[1]->standing, Standing::worse);
  EXPECT_EQ(row(comparison, "time_s").difference[1]->standing, Standing::same);
  EXPECT_FALSE(lip.difference[0]);
}

TEST(Comparison, TheOtherWayRoundIsBetter) {
  const Comparison comparison = compare_two(boss_with_z_error(0.15), boss_with_z_error(0.05));
  EXPECT_EQ(row(comparison, "rim/lip_mm").difference[1]->standing, Standing::better);
  EXPECT_EQ(row(comparison, "top/height_mm").difference[1]->standing, Standing::better);
}

TEST(Comparison, NearerToTheWantedSizeIsBetterFromEitherSide) {
  const Comparison comparison = compare_two(boss_with_z_error(-0.08), boss_with_z_error(0.03));
  const ComparedNumber &height = row(comparison, "top/height_mm");
  EXPECT_NEAR(height.difference[1]->value, 0.11, 1e-6);
  EXPECT_EQ(height.difference[1]->standing, Standing::better);
}

TEST(Comparison, APlanIsTheSameAsItselfInEveryNumber) {
  const Outcome outcome = test_support::rim_outcome();
  for (const ComparedNumber &number : compare_two(outcome, outcome).numbers) {
    ASSERT_TRUE(number.difference[1]) << number.number.id;
    EXPECT_EQ(number.difference[1]->value, 0.0) << number.number.id;
    EXPECT_NE(number.difference[1]->standing, Standing::better) << number.number.id;
    EXPECT_NE(number.difference[1]->standing, Standing::worse) << number.number.id;
  }
}

TEST(Comparison, WhatOnePlanLacksKeepsItsRowWithoutADifference) {
  const Outcome a = test_support::rim_outcome();
  Outcome b = a;
  b.features[0].cut_share = 0.0;
  const Comparison comparison = compare_two(b, a);
  const ComparedNumber &diameter = row(comparison, "rim/diameter_mm");
  EXPECT_FALSE(diameter.of[0]);
  EXPECT_TRUE(diameter.of[1]);
  EXPECT_FALSE(diameter.difference[1]);
  // It stands among the rim's numbers, not at the end of another feature's.
  EXPECT_EQ(comparison.numbers.back().number.feature, "rim");
}

TEST(Comparison, ADifferenceWithinItsSpreadIsNone) {
  Comparison comparison = compare_two(boss_with_z_error(0.05), boss_with_z_error(0.15));
  apply_bands(comparison, 1,
              std::array{NumberBand{"rim/lip_mm", {-0.02, 0.22}}, NumberBand{"top/height_mm", {0.05, 0.15}}});
  EXPECT_TRUE(comparison.knows_uncertainty);
  EXPECT_EQ(row(comparison, "rim/lip_mm").difference[1]->standing, Standing::same);
  EXPECT_EQ(row(comparison, "top/height_mm").difference[1]->standing, Standing::worse);
}

TEST(Comparison, CountsWhatIsMissedAndDangerous) {
  const Outcome outcome = test_support::rim_outcome();
  const Comparison comparison = compare_two(outcome, outcome);
  EXPECT_EQ(comparison.plans[1].letter, "B");
  EXPECT_EQ(comparison.plans[1].checks, 2u);
  EXPECT_EQ(comparison.plans[1].missed, 1u);
  EXPECT_EQ(comparison.plans[1].dangers, 1u);
  EXPECT_FALSE(comparison.plans[1].is_fit());
}

TEST(Comparison, PlansAreLettered) {
  EXPECT_EQ(plan_letter(0), "A");
  EXPECT_EQ(plan_letter(25), "Z");
  EXPECT_EQ(plan_letter(26), "A2");
}

} // namespace
} // namespace asperity
