// The moving median against every window sorted by the library.
#include "../../src/finding/moving_median.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace asperity::test {
namespace {

constexpr float kNone = std::numeric_limits<float>::quiet_NaN();

float sorted_median(const std::vector<float> &values, std::size_t middle, std::size_t half) {
  std::vector<float> window;
  for (std::size_t k = 0; k < 2 * half + 1; ++k)
    if (const float value = values[(middle + values.size() + k - half) % values.size()]; !std::isnan(value))
      window.push_back(value);
  if (window.empty())
    return kNone;
  std::sort(window.begin(), window.end());
  return 0.5f * (window[(window.size() - 1) / 2] + window[window.size() / 2]);
}

void expect_sorted_medians(const std::vector<float> &values, std::size_t half) {
  const std::vector<float> median = moving_median(values, half);
  ASSERT_EQ(median.size(), values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const float expected = sorted_median(values, i, half);
    if (std::isnan(expected))
      ASSERT_TRUE(std::isnan(median[i])) << i;
    else
      ASSERT_EQ(median[i], expected) << i << " of " << values.size() << ", half " << half;
  }
}

} // namespace

TEST(MovingMedian, EqualsEveryWindowSorted) {
  std::mt19937 dice(11);
  std::normal_distribution<float> height(0.0f, 0.01f);
  for (const std::size_t n : {1U, 2U, 3U, 64U, 65U, 129U, 1000U})
    for (const std::size_t half : {std::size_t{0}, std::size_t{1}, std::size_t{31}, (n - 1) / 2}) {
      if (2 * half + 1 > n)
        continue;
      // All known; with gaps, some as wide as a window; few steps, so that many are equal; nothing known.
      std::vector<float> known, gaps, steps;
      for (std::size_t i = 0; i < n; ++i) {
        known.push_back(height(dice));
        gaps.push_back(dice() % 3 == 0 || (i > n / 4 && i < 3 * n / 4) ? kNone : height(dice));
        steps.push_back(std::round(height(dice) / 0.01f));
      }
      expect_sorted_medians(known, half);
      expect_sorted_medians(gaps, half);
      expect_sorted_medians(steps, half);
      expect_sorted_medians(std::vector<float>(n, kNone), half);
    }
}

TEST(MovingMedian, OrdersAllNumbers) {
  constexpr float kHuge = std::numeric_limits<float>::max(),
                  kInfinity = std::numeric_limits<float>::infinity();
  const std::vector<float> values{0.0f,      -0.0f, -1e-40f, 1e-40f, kHuge / 4, -kHuge / 4,
                                  kInfinity, 1.0f,  -1.0f,   3.0f,   -2.0f};
  for (std::size_t half = 0; half < 5; ++half)
    expect_sorted_medians(values, half);
}

} // namespace asperity::test
