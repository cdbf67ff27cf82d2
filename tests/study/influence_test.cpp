// Main effects against a published two-factor table.
#include "asperity/study/influence.h"

#include "study/folder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {

namespace {

/// D. C. Montgomery, Design and Analysis of Experiments, tables 5.4 and 5.5 (8th edition): life of batteries
/// [h] by plate material (1, 2, 3) and temperature (15, 70, 125 degF), four cells each.
constexpr double kLife_h[3][3][4] = {{{130, 155, 74, 180}, {34, 40, 80, 75}, {20, 70, 82, 58}},
                                     {{150, 188, 159, 126}, {136, 122, 106, 115}, {25, 70, 58, 45}},
                                     {{138, 110, 168, 160}, {174, 120, 150, 139}, {96, 104, 82, 60}}};
constexpr double kTotal = 77646.97, kMaterial = 10683.72, kTemperature = 39118.72, kRest = 9613.78 + 18230.75;
constexpr double kPrinted = 0.011; // two decimals are printed, and the rest is a sum of two

Influence battery_life() {
  std::vector<std::vector<std::size_t>> levels;
  std::vector<double> values;
  for (std::size_t m = 0; m < 3; ++m)
    for (std::size_t t = 0; t < 3; ++t)
      for (const double life : kLife_h[m][t]) {
        levels.push_back({m, t});
        values.push_back(life);
      }
  return influence_of(levels, values, {3, 3});
}

} // namespace

TEST(Influence, SumsOfSquaresMatchThePublishedTable) {
  const Influence life = battery_life();
  EXPECT_EQ(life.count, 36u);
  EXPECT_NEAR(life.mean, 3799.0 / 36.0, 1e-9); // the table's total, 3799
  EXPECT_NEAR(life.sum_of_squares, kTotal, kPrinted);
  EXPECT_NEAR(life.factors[0].share * life.sum_of_squares, kMaterial, kPrinted);
  EXPECT_NEAR(life.factors[1].share * life.sum_of_squares, kTemperature, kPrinted);
  EXPECT_NEAR(life.together_share * life.sum_of_squares, kRest, kPrinted);
  EXPECT_TRUE(life.is_balanced);
}

TEST(Influence, MeansAndRangesMatchThePublishedTotals) {
  const Influence life = battery_life();
  // Table 5.4's totals: 998, 1300, 1501 by material, 1738, 1291, 770 by temperature, twelve cells each.
  EXPECT_NEAR(life.factors[0].level_mean[0], 998.0 / 12.0, 1e-9);
  EXPECT_NEAR(life.factors[0].level_mean[2], 1501.0 / 12.0, 1e-9);
  EXPECT_NEAR(life.factors[0].range, (1501.0 - 998.0) / 12.0, 1e-9);
  EXPECT_NEAR(life.factors[1].range, (1738.0 - 770.0) / 12.0, 1e-9);
}

TEST(Influence, AdditiveValuesLeaveNothingTogetherAndAProductLeavesAll) {
  std::vector<std::vector<std::size_t>> levels;
  std::vector<double> sums, products;
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t k = 0; k < 3; ++k) {
      levels.push_back({i, k});
      sums.push_back(2.0 * static_cast<double>(i) + 5.0 * static_cast<double>(k));
      products.push_back((static_cast<double>(i) - 1.0) * (static_cast<double>(k) - 1.0));
    }
  const Influence sum = influence_of(levels, sums, {3, 3});
  EXPECT_NEAR(sum.together_share, 0.0, 1e-12);
  EXPECT_NEAR(sum.factors[0].share, 4.0 / 29.0, 1e-12); // derived: shares go as the squares of the slopes
  const Influence product = influence_of(levels, products, {3, 3});
  EXPECT_NEAR(product.together_share, 1.0, 1e-12);
}

TEST(Influence, EqualValuesHaveNoVarianceToShare) {
  const Influence same = influence_of({{0}, {1}, {0}}, {0.1, 0.1, 0.1}, {2});
  EXPECT_EQ(same.factors[0].share, 0.0);
  EXPECT_EQ(same.together_share, 0.0);
  EXPECT_FALSE(same.is_balanced);
}

TEST(Influence, MissingTrialsAreNoticedAndAnUnseenValueHasNoMean) {
  StudyResults results{test_support::small_head(),
                       {test_support::trial_with(0, 100, 5), test_support::trial_with(4, 200, 3)}};
  const Influence found = influence_on(results, "time_s"); // combinations 0 = (0, 0) and 4 = (1, 1)
  EXPECT_EQ(found.count, 2u);
  EXPECT_FALSE(found.is_balanced);
  EXPECT_TRUE(std::isnan(found.factors[1].level_mean[2]));
  EXPECT_NEAR(found.factors[0].range, 100.0, 1e-12);
  EXPECT_EQ(influence_on(results, "nothing").count, 0u);
}

} // namespace asperity
