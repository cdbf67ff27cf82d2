// Profiles and statistics of charts whose numbers are known in closed form.
#include "chart_profile.h"

#include "cut_figures.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace asperity {

namespace {

/// Residuals are stored as float millimetres of about 0.01: a relative error of 6e-8 is below 1e-6 um.
constexpr double kFloat_um = 1e-5;

FloorChart ramp_chart() {
  FloorChart chart = make_floor_chart({0.0, 0.0}, {9.0, 4.0}, 1.0, 0.0);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i)
      chart.envelope_mm[chart.at(i, j)] = 0.001f * static_cast<float>(i);
  return chart;
}

} // namespace

TEST(ChartProfile, MeanOverColumnsFollowsARampAndOverRowsIsEven) {
  const FloorChart chart = ramp_chart();
  const ChartProfiles profiles = chart_profiles(chart, 400);
  ASSERT_EQ(profiles.across.mean_um.size(), chart.nx);
  for (std::size_t i = 0; i < chart.nx; ++i)
    EXPECT_NEAR(profiles.across.mean_um[i], static_cast<double>(i), kFloat_um);
  const double middle_um = 0.5 * static_cast<double>(chart.nx - 1);
  for (double mean_um : profiles.up.mean_um)
    EXPECT_NEAR(mean_um, middle_um, kFloat_um);
}

TEST(ChartProfile, JoiningColumnsKeepsTheMeanAndTheMiddle) {
  const FloorChart chart = ramp_chart();
  const ChartProfiles profiles = chart_profiles(chart, chart.nx / 2);
  ASSERT_LE(profiles.across.mean_um.size(), chart.nx / 2);
  for (std::size_t k = 0; k + 1 < profiles.across.mean_um.size(); ++k)
    EXPECT_NEAR(profiles.across.mean_um[k], profiles.across.place_mm[k] - chart.origin_mm.x, kFloat_um);
}

TEST(ChartProfile, CellsNobodyCutCountForTheShareOnly) {
  const double spacing_mm = 0.2; // 3 of 70 rows lie in the lip
  const ChartProfiles profiles = chart_profiles(test_support::rim_chart(spacing_mm), 400);
  EXPECT_TRUE(std::isnan(profiles.up.mean_um.front()));
  EXPECT_EQ(profiles.up.cut_share.front(), 0.0);
  EXPECT_EQ(profiles.up.cut_share.back(), 1.0);
  EXPECT_NEAR(profiles.across.cut_share.front(), 1.0 - test_support::kLip_mm / test_support::kRimTop_mm,
              1e-9);
}

TEST(ResidualStatistics, OfAUniformRampAreThoseOfADiscreteUniformLaw) {
  FloorChart chart = ramp_chart();
  const auto n = static_cast<double>(chart.nx);
  const ResidualStatistics r = residual_statistics(chart);
  EXPECT_NEAR(r.mean_um, 0.5 * (n - 1.0), kFloat_um);
  EXPECT_NEAR(r.deviation_um, std::sqrt((n * n - 1.0) / 12.0),
              kFloat_um); // variance of 0..n-1, any statistics book
  EXPECT_NEAR(r.lowest_um, 0.0, kFloat_um);
  EXPECT_NEAR(r.highest_um, n - 1.0, kFloat_um);
}

TEST(ResidualStatistics, PercentilesAreTheValuesOfThatRankInASortedList) {
  FloorChart chart = make_floor_chart({0.0, 0.0}, {101.0, 53.0}, 1.0, 0.0);
  std::mt19937 random(5);
  std::normal_distribution<float> e(0.001f, 0.01f); // to both sides of nothing
  std::generate(chart.envelope_mm.begin(), chart.envelope_mm.end(), [&] { return e(random); });
  LargeArray<float> sorted = chart.envelope_mm;
  std::sort(sorted.begin(), sorted.end());
  const auto at_um = [&](double share) {
    return 1e3 *
           static_cast<double>(
               sorted[static_cast<std::size_t>(std::lround(share * static_cast<double>(sorted.size() - 1)))]);
  };
  const ResidualStatistics r = residual_statistics(chart);
  EXPECT_DOUBLE_EQ(r.percentile_1_um, at_um(0.01));
  EXPECT_DOUBLE_EQ(r.median_um, at_um(0.5));
  EXPECT_DOUBLE_EQ(r.percentile_99_um, at_um(0.99));
}

TEST(ResidualStatistics, LeaveOutCellsOutsideTheFeature) {
  FloorChart chart = ramp_chart();
  chart.wanted_mm[0] = std::nanf("");
  const ResidualStatistics r = residual_statistics(chart);
  EXPECT_EQ(r.cells, chart.nx * chart.ny - 1);
  EXPECT_EQ(r.cut_cells, r.cells);
}

TEST(CutFigures, OnlyMomentsInContactCountAsPeaks) {
  Outcome outcome = test_support::rim_outcome();
  CutSample idle = outcome.cut.samples[0];
  idle.in_contact = false;
  idle.peak_force_N = 99.0f;
  outcome.cut.samples.push_back(idle);
  const CutPeaks peaks = cut_peaks(outcome.cut, outcome.path);
  ASSERT_TRUE(peaks.force_N);
  EXPECT_EQ(peaks.force_N->value, 23.0);
  EXPECT_EQ(peaks.force_N->line, 13u);
}

TEST(CutFigures, ToolTimesAddUpToTheWholeTime) {
  const Outcome outcome = test_support::rim_outcome();
  double total_s = 0.0, cutting_s = 0.0;
  for (const ToolTime &tool : time_per_tool(outcome.path)) {
    total_s += tool.total_s;
    cutting_s += tool.cutting_s;
  }
  EXPECT_DOUBLE_EQ(total_s, outcome.path.duration_s);
  EXPECT_DOUBLE_EQ(cutting_s, outcome.path.cutting_s);
}

} // namespace asperity
