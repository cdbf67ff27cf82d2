// e_B - e_A on charts whose heights are formulas.
#include "asperity/compare/difference_chart.h"

#include "properties/small_job.h"
#include "support/sheave_outcome.h"

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding_um = 0.01; // heights of some 0.1 mm in floats
constexpr double kLength_mm = 62.0 * kPi;

/// A rim whose residual is even_um + wave_um cos(2 pi 3 s/L), all of it cut.
Chart wave_wall(double spacing_mm, double even_um, double wave_um) {
  WallChart chart = make_wall_chart(Outline::circle({0, 0}, 62.0), false, 0.0, 14.0, spacing_mm);
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const double e = even_um + wave_um * std::cos(2.0 * kPi * 3.0 * chart.s_mm[i] / kLength_mm);
      chart.blank_mm[chart.at(i, j)] = 1.0f;
      chart.envelope_mm[chart.at(i, j)] = static_cast<float>(mm_from_um(e));
    }
  return chart;
}

TEST(DifferenceChart, IsTheOtherMinusTheFirstOnTheSameCells) {
  const Chart a = wave_wall(0.5, 10.0, 4.0), b = wave_wall(0.5, 13.0, 4.0);
  const DifferenceChart difference = difference_chart(a, b);
  EXPECT_FALSE(difference.is_resampled);
  EXPECT_NEAR(difference.mean_um, 3.0, kRounding_um);
  EXPECT_NEAR(difference.lowest_um, 3.0, kRounding_um);
  EXPECT_NEAR(difference.highest_um, 3.0, kRounding_um);
  EXPECT_EQ(difference.both_share, 1.0);
}

TEST(DifferenceChart, AWaveHasItsRootMeanSquare) {
  const DifferenceChart difference = difference_chart(wave_wall(0.5, 0.0, 0.0), wave_wall(0.5, 0.0, 4.0));
  EXPECT_NEAR(difference.mean_um, 0.0, kRounding_um);
  EXPECT_NEAR(difference.rms_um, 4.0 / std::sqrt(2.0), kRounding_um); // of a cosine
}

// derived: linear interpolation of a cosine of wavelength w over steps h errs by at most (pi h/w)^2/2 of its
// height; h 0.7 mm, w 64.9 mm: 0.06 %. The closing gap of the outline is bridged like any other.
TEST(DifferenceChart, OtherSpacingIsResampledAllRound) {
  const Chart a = wave_wall(0.5, 10.0, 40.0), b = wave_wall(0.7, 12.0, 40.0);
  const DifferenceChart difference = difference_chart(a, b);
  EXPECT_TRUE(difference.is_resampled);
  EXPECT_EQ(difference.both_share, 1.0);
  EXPECT_NEAR(difference.lowest_um, 2.0, 0.06);
  EXPECT_NEAR(difference.highest_um, 2.0, 0.06);
}

TEST(DifferenceChart, CellsCutInOneOnlyAreCountedNotCompared) {
  Chart a = wave_wall(0.5, 10.0, 0.0), b = a;
  WallChart &wall = std::get<WallChart>(b);
  for (std::size_t i = 0; i < wall.columns(); ++i) // the lowest of 28 rows is not reached
    wall.envelope_mm[wall.at(i, 0)] = std::numeric_limits<float>::infinity();
  const DifferenceChart difference = difference_chart(a, b);
  EXPECT_NEAR(difference.first_only_share, 1.0 / 28.0, 1e-12);
  EXPECT_EQ(difference.other_only_share, 0.0);
  EXPECT_TRUE(std::isnan(difference.difference_um[0]));
  EXPECT_NEAR(difference.mean_um, 0.0, kRounding_um);
}

// Plane geometry: a cutter 0.1 mm too large all round leaves the wall 0.05 mm deeper.
TEST(DifferenceChart, ALargerCutterLeavesTheWallDeeperByHalfItsExcess) {
  Job job = test::boss_job();
  job.effects.diameter_error = true;
  const Outcome a = test::predicted(job, test::boss_program());
  job.cutters[0].diameter_error_mm = 0.1;
  const Outcome b = test::predicted(job, test::boss_program());
  const FeaturePairs pairs = feature_pairs(a.job, b.job);
  ASSERT_EQ(pairs.pairs.size(), 2u);
  const DifferenceChart wall = difference_chart(a.charts[0], b.charts[0]);
  EXPECT_NEAR(wall.mean_um, -50.0, kRounding_um);
  const DifferenceChart top = difference_chart(a.charts[1], b.charts[1]);
  EXPECT_NEAR(top.highest_um, 0.0, kRounding_um);
}

TEST(FeaturePairs, OtherGeometryUnderTheSameNameIsLeftOutAndSaid) {
  const Job a = test::boss_job();
  Job b = a;
  std::get<WallFeature>(b.features[0]).outline = Outline::circle({0, 0}, 20.5);
  std::get<FloorFeature>(b.features[1]).name = "other top";
  const FeaturePairs pairs = feature_pairs(a, b);
  EXPECT_TRUE(pairs.pairs.empty());
  ASSERT_EQ(pairs.left_out.size(), 1u);
  EXPECT_NE(pairs.left_out[0].find("rim"), std::string::npos);
}

} // namespace
} // namespace asperity
