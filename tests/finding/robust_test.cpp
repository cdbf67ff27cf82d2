// Statistics that must not follow odd values.
#include "../../src/finding/patch.h"
#include "../../src/finding/robust.h"

#include <gtest/gtest.h>

#include <algorithm>
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

// The middle of the sorted list, by definition; lists long enough to be looked at by sample first, some of
// them such that the sample misleads.
TEST(Robust, MedianOfLongListsIsThatOfTheSortedOnes) {
  std::mt19937 random(11);
  std::uniform_real_distribution<float> draw(-1.0f, 1.0f);
  const auto check = [](std::vector<float> values, const char *what) {
    std::vector<float> sorted = values;
    std::sort(sorted.begin(), sorted.end());
    const std::size_t half = sorted.size() / 2;
    const double expected = sorted.size() % 2 == 1 ? double(sorted[half])
                                                   : 0.5 * (double(sorted[half - 1]) + double(sorted[half]));
    EXPECT_EQ(median_of(std::span<float>(values)), expected) << what << sorted.size();
  };
  for (const std::size_t count : {160u, 161u, 162u, 1024u, 1025u, 5000u, 5001u, 20480u}) {
    std::vector<float> noise, rising, few, misleading;
    for (std::size_t i = 0; i < count; ++i) {
      noise.push_back(draw(random));
      rising.push_back(static_cast<float>(i));
      few.push_back(std::round(2.0f * draw(random)));
      misleading.push_back(i * 32 / count != (i + count - 1) % count * 32 / count ? 5.0f : draw(random));
    }
    check(noise, "noise ");
    check(rising, "rising ");
    check(few, "few values ");
    check(misleading, "misleading sample ");
    check(std::vector<float>(count, 3.0f), "all equal ");
  }
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
  EXPECT_EQ(patches_of(marked, 5, true).front().cells, 2u);
  EXPECT_EQ(patches_of(marked, 5, false).size(), 3u);
}

/// Cells joined to `start`, by plain flooding.
std::vector<std::size_t> flooded(const std::vector<bool> &marked, std::size_t columns, bool wraps,
                                 std::size_t start) {
  std::vector<bool> seen(marked.size(), false);
  std::vector<std::size_t> cells{start};
  seen[start] = true;
  for (std::size_t k = 0; k < cells.size(); ++k)
    for (std::size_t other = 0; other < marked.size(); ++other) {
      const std::size_t i = cells[k] % columns, j = cells[k] / columns, oi = other % columns,
                        oj = other / columns;
      const bool beside =
          oj == j && (oi + 1 == i || i + 1 == oi || (wraps && (oi + i + 1 == columns) && oi * i == 0));
      const bool above = oi == i && (oj + 1 == j || j + 1 == oj);
      if (marked[other] && !seen[other] && (beside || above)) {
        seen[other] = true;
        cells.push_back(other);
      }
    }
  return cells;
}

TEST(Patch, RandomMarksFallIntoTheSamePatchesAsByFlooding) {
  std::mt19937 random(11);
  for (int round = 0; round < 200; ++round) {
    constexpr std::size_t kColumns = 13, kRows = 9;
    const bool wraps = round % 2 == 0;
    std::vector<bool> marked(kColumns * kRows);
    for (std::size_t cell = 0; cell < marked.size(); ++cell)
      marked[cell] = random() % 100 < 55;
    std::size_t cells = 0, largest = 0;
    for (const Patch &patch : patches_of(marked, kColumns, wraps)) {
      const std::vector<std::size_t> by_flood =
          flooded(marked, kColumns, wraps, patch.runs.front().row * kColumns + patch.runs.front().first);
      EXPECT_EQ(patch.cells, by_flood.size());
      for (const std::size_t cell : by_flood)
        EXPECT_TRUE(patch.holds(cell / kColumns, cell % kColumns));
      cells += patch.cells;
      largest = largest == 0 ? patch.cells : largest;
      EXPECT_LE(patch.cells, largest) << "largest first";
    }
    EXPECT_EQ(cells, static_cast<std::size_t>(std::count(marked.begin(), marked.end(), true)));
  }
}

} // namespace
} // namespace asperity::test
