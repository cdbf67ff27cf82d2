// Side tasks are done beside the band that adds them, all of them before finish() returns.
#include "asperity/base/parallel.h"
#include "asperity/base/progress.h"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <stdexcept>
#include <thread>

namespace asperity {
namespace {

TEST(SideTasks, AreDoneByAThreadThatHasNothingElseToDo) {
  if (std::thread::hardware_concurrency() < 2)
    GTEST_SKIP() << "one core";
  std::atomic<bool> is_done{false}, was_done_meanwhile{false};
  side_by_side({[&](SideTasks &tasks) {
                  tasks.add([&] { is_done = true; });
                  const auto deadline = std::chrono::steady_clock::now() + std::chrono::seconds(20);
                  while (!is_done && std::chrono::steady_clock::now() < deadline)
                    std::this_thread::yield();
                  was_done_meanwhile = is_done.load();
                },
                [](SideTasks &) {}},
               2);
  EXPECT_TRUE(was_done_meanwhile);
}

TEST(SideTasks, AreAllDoneWhoeverAddsThemAndWhenever) {
  for (const int threads : {0, 1, 2, 5}) {
    std::atomic<int> done{0};
    const auto work = [&](SideTasks &tasks) {
      std::this_thread::sleep_for(std::chrono::milliseconds(3));
      for (int i = 0; i < 50; ++i)
        tasks.add([&] {
          for_each_band(4, 1, threads, [&](std::size_t, std::size_t) { ++done; });
          tasks.add([&] { ++done; });
        });
    };
    side_by_side({work, [](SideTasks &) {}, work}, threads);
    EXPECT_EQ(done, 2 * 50 * 5) << threads << " threads";
  }
}

TEST(SideTasks, OnOneThreadAreDoneAtOnceInOrder) {
  std::vector<int> order;
  side_by_side({[&](SideTasks &tasks) {
                  order.push_back(1);
                  tasks.add([&] { order.push_back(2); });
                  order.push_back(3);
                },
                [&](SideTasks &) { order.push_back(4); }},
               1);
  EXPECT_EQ(order, (std::vector{1, 2, 3, 4}));
}

TEST(SideTasks, HandOnWhatIsThrownOnceAllElseIsDone) {
  for (const bool by_task : {false, true}) {
    std::atomic<int> begun{0}, ended{0};
    const auto slow = [&] {
      ++begun;
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
      ++ended;
    };
    const auto fail = [] { throw std::runtime_error("no"); };
    EXPECT_THROW(side_by_side({[&](SideTasks &tasks) {
                                 for (int i = 0; i < 4; ++i)
                                   tasks.add(slow);
                                 by_task ? tasks.add(fail) : fail();
                               },
                               [&](SideTasks &) { slow(); }},
                              2),
                 std::runtime_error);
    EXPECT_EQ(begun, ended) << by_task;
  }
}

TEST(Progress, HeedsTheWishToStopOfAnother) {
  Progress outer, inner;
  inner.heeds = &outer;
  EXPECT_FALSE(inner.cancelled());
  outer.cancel();
  EXPECT_TRUE(inner.cancelled());
}

} // namespace
} // namespace asperity
