// Lists set by many threads hold the value everywhere, whatever their length.
#include "asperity/base/filled_list.h"

#include <gtest/gtest.h>

#include <cstdint>

namespace asperity {
namespace {

constexpr std::size_t kAFewBands = 200'000;

TEST(FilledList, HoldsTheValueInEveryPlaceForAnyThreadCount) {
  for (const std::size_t count : {std::size_t{0}, std::size_t{1}, kAFewBands, kAFewBands + 1})
    for (const int threads : {0, 1, 2, 7}) {
      const LargeArray<std::uint32_t> list = filled_list<std::uint32_t>(count, 7, threads);
      ASSERT_EQ(list.size(), count);
      EXPECT_EQ(std::count(list.begin(), list.end(), 7u), static_cast<std::ptrdiff_t>(count))
          << threads << " threads";
    }
}

TEST(FilledList, OnTheDiskToo) {
  constexpr std::size_t kLong = kOnDiskFrom_bytes / sizeof(float) + 5;
  const LargeArray<float> list = filled_list(kLong, 2.5f, 2);
  EXPECT_EQ(std::count(list.begin(), list.end(), 2.5f), static_cast<std::ptrdiff_t>(kLong));
}

} // namespace
} // namespace asperity
