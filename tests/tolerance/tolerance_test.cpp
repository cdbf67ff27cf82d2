// Bands of a small job: known answers where one length moves one size, the same bits however it is run.
#include "asperity/tolerance/tolerance.h"

#include "tolerance/bush_job.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

using test_support::bush_job;
using test_support::BushJob;

Tolerance run(const BushJob &bush, const ToleranceOptions &options) {
  return tolerance_of({bush.job, bush.program}, options, Progress{});
}

const BushJob &uncertain_bush() {
  static const BushJob bush = [] {
    BushJob made = bush_job();
    made.job.uncertainty.cutter_diameter_mm = 0.04;
    made.job.uncertainty.stiffness_share = 0.5;
    made.job.uncertainty.edge_force_share = 0.5;
    made.job.uncertainty.z_zero_mm = 0.1;
    return made;
  }();
  return bush;
}

void expect_same(const Tolerance &a, const Tolerance &b) {
  ASSERT_EQ(a.bands.size(), b.bands.size());
  for (std::size_t i = 0; i < a.bands.size(); ++i) {
    EXPECT_EQ(a.bands[i].id, b.bands[i].id);
    EXPECT_EQ(a.bands[i].mean, b.bands[i].mean) << a.bands[i].id;
    EXPECT_EQ(a.bands[i].standard_deviation, b.bands[i].standard_deviation) << a.bands[i].id;
    EXPECT_EQ(a.bands[i].low, b.bands[i].low) << a.bands[i].id;
    EXPECT_EQ(a.bands[i].high, b.bands[i].high) << a.bands[i].id;
    ASSERT_EQ(a.bands[i].shares.size(), b.bands[i].shares.size());
    for (std::size_t k = 0; k < a.bands[i].shares.size(); ++k)
      EXPECT_EQ(a.bands[i].shares[k].share, b.bands[i].shares[k].share);
  }
}

/// The bush without bending under one uncertain length, U = 0.08 mm (k = 2), u = 0.04 mm.
constexpr int kDraws = 120;
constexpr double kU_mm = 0.04;
const Tolerance &one_uncertain_length() {
  static const Tolerance tolerance = [] {
    BushJob bush = bush_job();
    bush.job.effects.cutter_bending = bush.job.effects.machine_bending = bush.job.effects.blank_bending =
        false;
    bush.job.uncertainty.cutter_diameter_mm = 2.0 * kU_mm;
    return run(bush, {.draws = kDraws});
  }();
  return tolerance;
}

// derived: without bending the cutter's centre runs at 13 mm; a cutter larger by d makes the disc smaller by
// d. The standard deviation of n draws is off by 1/sqrt(2 n), the mean by 1/sqrt(n): four of them.
TEST(Tolerance, OfOneCutterErrorIsThatErrorOnTheDiameter) {
  ASSERT_EQ(one_uncertain_length().status, Status::done) << one_uncertain_length().why;
  const Band *diameter = find_band(one_uncertain_length(), "side/diameter_mm");
  ASSERT_NE(diameter, nullptr);
  EXPECT_NEAR(diameter->standard_deviation, kU_mm, kU_mm * 4.0 / std::sqrt(2.0 * kDraws));
  EXPECT_NEAR(diameter->mean, diameter->value, kU_mm * 4.0 / std::sqrt(kDraws));
  ASSERT_EQ(diameter->shares.size(), 1u);
  EXPECT_NEAR(diameter->shares[0].share, 1.0, 1e-3); // charts are single precision
  EXPECT_EQ(diameter->shares[0].input, "cutter 1 cutter_diameter_mm");
  // The ends of the band are the 2.5 % quantiles, each off by some sqrt(0.025 0.975/n)/0.0584 = 0.24 u.
  EXPECT_NEAR(diameter->high - diameter->low, 2.0 * 1.96 * kU_mm, 4.0 * std::sqrt(2.0) * 0.24 * kU_mm);
}

// derived: by JCGM 106 the probability that a normal size with standard deviation u, its middle off by the
// runout of 0.02 mm, lies within +-0.05 mm. Of n draws: four standard deviations of the binomial.
TEST(Tolerance, CountsHowOftenAWantedSizeIsMet) {
  ASSERT_EQ(one_uncertain_length().conformances.size(), 1u);
  const auto below = [](double g) { return 0.5 * std::erfc(-g / std::sqrt(2.0)); };
  const double expected = below((0.05 + 0.02) / kU_mm) - below((-0.05 + 0.02) / kU_mm);
  EXPECT_NEAR(one_uncertain_length().conformances[0].met_share, expected,
              4.0 * std::sqrt(expected * (1.0 - expected) / kDraws));
}

const Tolerance &first_run() {
  static const Tolerance tolerance = run(uncertain_bush(), {.draws = 16, .seed = 5});
  return tolerance;
}

TEST(Tolerance, IsRepeatableBySeed) {
  expect_same(first_run(), run(uncertain_bush(), {.draws = 16, .seed = 5}));
  const Tolerance other = run(uncertain_bush(), {.draws = 16, .seed = 6});
  EXPECT_NE(find_band(first_run(), "side/diameter_mm")->mean, find_band(other, "side/diameter_mm")->mean);
}

TEST(Tolerance, GivesTheSameBitsOnOneThreadAndOnMany) {
  expect_same(first_run(), run(uncertain_bush(), {.draws = 16, .seed = 5, .threads = 1}));
  expect_same(first_run(), run(uncertain_bush(), {.draws = 16, .seed = 5, .threads = 4}));
}

// A job against itself differs by nothing under the same draws, whatever is uncertain.
TEST(ToleranceOfDifference, OfAJobAgainstItselfIsNought) {
  const BushJob &bush = uncertain_bush();
  const JobToDraw side{bush.job, bush.program};
  const Tolerance difference = tolerance_of_difference(side, side, {.draws = 6}, Progress{});
  ASSERT_FALSE(difference.bands.empty());
  for (const Band &band : difference.bands) {
    EXPECT_EQ(band.low, 0.0) << band.id;
    EXPECT_EQ(band.high, 0.0) << band.id;
  }
}

// What moves both jobs alike leaves their difference alone: its band is narrower than either job's.
TEST(ToleranceOfDifference, CommonErrorsCancel) {
  BushJob bush = bush_job(), larger = bush;
  bush.job.uncertainty.cutter_diameter_mm = larger.job.uncertainty.cutter_diameter_mm = 0.06;
  larger.job.blank.diameter_mm = 21.5;
  const ToleranceOptions options{.draws = 20};
  const Tolerance alone = tolerance_of({bush.job, bush.program}, options, Progress{});
  const Tolerance difference =
      tolerance_of_difference({bush.job, bush.program}, {larger.job, larger.program}, options, Progress{});
  const Band *one = find_band(alone, "side/diameter_mm"), *both = find_band(difference, "side/diameter_mm");
  ASSERT_TRUE(one && both);
  EXPECT_GT(both->value, 0.0) << "more stock, more bending, a prouder wall";
  EXPECT_LT(both->standard_deviation, 0.1 * one->standard_deviation);
}

TEST(Tolerance, StopsWhenCancelled) {
  Progress progress;
  progress.cancel();
  const BushJob &bush = uncertain_bush();
  EXPECT_EQ(tolerance_of({bush.job, bush.program}, {.draws = 20}, progress).status, Status::cancelled);
}

TEST(UncertainInput, EffectsThatAreOffHaveNone) {
  BushJob bush = bush_job();
  bush.job.uncertainty.z_zero_mm = bush.job.uncertainty.runout_share = 0.1;
  EXPECT_EQ(uncertain_inputs(bush.job).size(), 2u);
  bush.job.effects.zero_error = bush.job.effects.runout = false;
  EXPECT_TRUE(uncertain_inputs(bush.job).empty());
}

// A share of 0.5 at coverage factor 2: two standard uncertainties up is 1.5 times, two down 1/1.5 times.
TEST(UncertainInput, SharesMultiplyAndLengthsAdd) {
  const BushJob bush = bush_job();
  const UncertainInput stiffness = uncertain_input(bush.job, InputKind::stiffness, 0, 0.5);
  const double up[] = {2.0}, down[] = {-2.0};
  EXPECT_NEAR(job_with(bush.job, std::span(&stiffness, 1), up).machine.stiffness_xy_N_per_um, 0.45, 1e-12);
  EXPECT_NEAR(job_with(bush.job, std::span(&stiffness, 1), down).machine.stiffness_xy_N_per_um, 0.2, 1e-12);
  const UncertainInput zero = uncertain_input(bush.job, InputKind::z_zero, 0, 0.1);
  EXPECT_NEAR(job_with(bush.job, std::span(&zero, 1), up).setup.z_zero_error_mm, 0.1, 1e-12);
  EXPECT_NEAR(expanded_uncertainty_of(standard_uncertainty_of(0.7, true), true), 0.7, 1e-12);
}

} // namespace
} // namespace asperity
