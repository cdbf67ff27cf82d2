// The highest of many, against the plain definition.
#include "asperity/base/highest.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

using namespace asperity;

TEST(Highest, IsTheLargestOfAnyNumberOfValues) {
  std::mt19937 random(5);
  std::uniform_real_distribution<float> value(-3.0f, -1.0f);
  for (std::size_t count = 1; count < 100; ++count) {
    std::vector<float> values(count);
    for (float &v : values)
      v = value(random);
    EXPECT_EQ(highest(values), *std::max_element(values.begin(), values.end())) << count;
    values[count - 1] = 2.0f;
    EXPECT_EQ(highest(values), 2.0f) << count;
  }
}

TEST(Highest, LeavesOutWhatIsNoNumber) {
  constexpr float kNan = std::numeric_limits<float>::quiet_NaN(),
                  kNone = -std::numeric_limits<float>::infinity();
  EXPECT_EQ(highest({}), kNone);
  EXPECT_EQ(highest(std::vector<float>(40, kNan)), kNone);
  std::vector<float> values(40, kNan);
  values[17] = -1.0f;
  EXPECT_EQ(highest(values), -1.0f);
  values[38] = std::numeric_limits<float>::infinity();
  EXPECT_EQ(highest(values), values[38]);
}
