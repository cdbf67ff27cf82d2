// Statistics that must not follow odd values.
#include "../../src/finding/patch.h"
#include "../../src/finding/robust.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace asperity::test {
namespace {

TEST(Robust, MedianOfEvenAndOddCounts) {
  std::vector<double> odd{3, 1, 2}, even{4, 1, 3, 2}, none;
  EXPECT_EQ(median_of(std::span<double>(odd)), 2.0);
  EXPECT_EQ(median_of(std::span<double>(even)), 2.5);
  EXPECT_TRUE(std::isnan(median_of(std::span<double>(none))));
}

// 1.4826 MAD estimates sigma of a normal law [Rousseeuw & Croux 1993]; 100000 draws hold it to about 0.4 %.
TEST(Robust, DeviationOfNormalNoiseIsSigmaEvenWithOddValues) {
  std::mt19937 random(7);
  std::normal_distribution<double> normal(5.0, 2.0);
  std::vector<double> values;
  for (int k = 0; k < 100000; ++k)
    values.push_back(normal(random));
  for (int k = 0; k < 1000; ++k)
    values.push_back(1e6);
  EXPECT_NEAR(robust_deviation(values), 2.0, 0.05);
}

// Siegel 1982: the repeated median stays on the line while fewer than half of the points are wrong.
TEST(Robust, RepeatedMedianLineIgnoresFortyPercentWrongPoints) {
  std::vector<double> x, y;
  for (int k = 0; k < 50; ++k) {
    x.push_back(k);
    y.push_back(k < 20 ? 1000.0 + 7 * k * k : 2.0 - 0.5 * k);
  }
  const StraightLine line = repeated_median_line(x, y);
  EXPECT_NEAR(line.slope, -0.5, 1e-12);
  EXPECT_NEAR(line.at(10), -3.0, 1e-12);
}

TEST(Patch, CellsJoinRoundTheSeamOnlyWhereTheChartCloses) {
  // Three rows of five: marked at both ends of the middle row, and one alone below.
  std::vector<bool> marked(15, false);
  marked[5] = marked[9] = marked[2] = true;
  EXPECT_EQ(patches_of(marked, 5, true).size(), 2u);
  EXPECT_EQ(patches_of(marked, 5, true).front().cells.size(), 2u);
  EXPECT_EQ(patches_of(marked, 5, false).size(), 3u);
}

} // namespace
} // namespace asperity::test
