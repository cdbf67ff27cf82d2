// Bands are fixed, cover everything once and do not depend on the thread count.
#include "asperity/base/parallel.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <mutex>
#include <set>
#include <thread>
#include <utility>
#include <vector>

namespace asperity {
namespace {

using Bands = std::set<std::pair<std::size_t, std::size_t>>;

Bands bands_seen(std::size_t count, std::size_t band, int threads) {
  Bands seen;
  std::mutex lock;
  for_each_band(count, band, threads, [&](std::size_t begin, std::size_t end) {
    const std::scoped_lock hold(lock);
    EXPECT_TRUE(seen.emplace(begin, end).second) << "a band was worked twice";
  });
  return seen;
}

TEST(Bands, AreTheSameForAnyThreadCount) {
  const Bands expected = {{0, 16}, {16, 32}, {32, 48}, {48, 50}};
  for (const int threads : {0, 1, 2, 3, 8})
    EXPECT_EQ(bands_seen(50, 16, threads), expected) << threads << " threads";
}

TEST(Bands, NothingToDoCallsNobody) { EXPECT_TRUE(bands_seen(0, 16, 0).empty()); }

TEST(Bands, AnExactMultipleHasNoEmptyLastBand) {
  EXPECT_EQ(bands_seen(32, 16, 2), (Bands{{0, 16}, {16, 32}}));
}

TEST(Bands, EveryItemIsWorkedExactlyOnce) {
  std::vector<std::atomic<int>> worked(10007);
  for_each_band(worked.size(), 13, 0, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      worked[i].fetch_add(1);
  });
  for (std::size_t i = 0; i < worked.size(); ++i)
    ASSERT_EQ(worked[i].load(), 1) << "item " << i;
}

TEST(Bands, WithinBandsAreSharedByThreadsThatHaveNothingElseToDo) {
  if (std::thread::hardware_concurrency() < 2)
    GTEST_SKIP() << "one core";
  const std::thread::id caller = std::this_thread::get_id();
  const auto deadline = std::chrono::steady_clock::now() + std::chrono::seconds(20);
  const auto wait_until = [&](const auto &holds) {
    while (!holds() && std::chrono::steady_clock::now() < deadline)
      std::this_thread::yield();
  };
  std::atomic<int> begun{0}, seen_by_caller{0};
  for_each_band(2, 1, 2, [&](std::size_t, std::size_t) {
    ++begun;
    wait_until([&] { return begun == 2; }); // each thread has one
    if (std::this_thread::get_id() != caller)
      for_each_band(8, 1, 2, [&](std::size_t, std::size_t) {
        seen_by_caller += std::this_thread::get_id() == caller ? 1 : 0;
        wait_until([&] { return seen_by_caller > 0; });
      });
  });
  EXPECT_GT(seen_by_caller, 0) << "the caller's own band was done long before";
}

TEST(Bands, OneThreadWorksInOrderInTheCallingThread) {
  std::vector<std::size_t> order;
  const std::thread::id caller = std::this_thread::get_id();
  for_each_band(40, 10, 1, [&](std::size_t begin, std::size_t) {
    EXPECT_EQ(std::this_thread::get_id(), caller);
    order.push_back(begin);
  });
  EXPECT_EQ(order, (std::vector<std::size_t>{0, 10, 20, 30}));
}

} // namespace
} // namespace asperity
