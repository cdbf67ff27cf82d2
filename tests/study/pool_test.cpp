// Many predictions at once: the same trials on any number of threads, within the memory allowed, stopped
// cleanly.
#include "asperity/passes/job_program.h"
#include "asperity/study/merge.h"
#include "asperity/study/run_study.h"
#include "memory_share.h"
#include "study/study_workshop.h"

#include <algorithm>
#include <atomic>
#include <thread>

namespace asperity::test_support {

namespace {

class StudyPool : public StudyWorkshop {
protected:
  StudyHead head() const {
    Problems problems;
    const std::vector<std::string> vary{"program=bush.ngc,slow.ngc", "cutter.1.runout_mm=0.0,0.02"};
    const auto grid = read_grid(vary, problems);
    auto head = read_head(folder() / "bush.toml", *grid, false, "test", problems);
    EXPECT_FALSE(problems.has_errors());
    return *head;
  }
  std::vector<Trial> trials_of(int threads, double memory_bytes, const Progress &progress = {}) const {
    const StudyHead begin = head();
    std::vector<Trial> trials;
    const auto keep = [&](const Trial &trial) {
      trials.push_back(trial);
      return std::string();
    };
    EXPECT_EQ(run_trials({begin, {0, 1, 2, 3}, threads, memory_bytes}, keep, progress), "");
    std::sort(trials.begin(), trials.end(),
              [](const Trial &a, const Trial &b) { return a.combination < b.combination; });
    return trials;
  }
};

} // namespace

TEST_F(StudyPool, TrialsAreTheSameOnAnyNumberOfThreads) {
  const std::vector<Trial> one = trials_of(1, 0), many = trials_of(7, 0);
  ASSERT_EQ(one.size(), 4u);
  ASSERT_EQ(many.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(one[i].status, TrialStatus::done) << one[i].why;
    EXPECT_TRUE(is_same_result(one[i], many[i])) << i;
  }
}

TEST_F(StudyPool, WithMemoryForOneAtATimeTheTrialsAreTheSame) {
  const std::vector<Trial> free = trials_of(3, 0);
  Problems problems;
  const auto job = read_job(folder() / "bush.toml", problems);
  const auto program = job_program(*job, problems);
  const double bytes = static_cast<double>(memory_bound(*job, program->program).in_memory_bytes);
  const std::vector<Trial> tight = trials_of(3, 1.5 * bytes);
  ASSERT_EQ(tight.size(), free.size());
  for (std::size_t i = 0; i < free.size(); ++i)
    EXPECT_TRUE(is_same_result(free[i], tight[i])) << i << ' ' << tight[i].why;
}

TEST_F(StudyPool, ATrialThatNeedsMoreThanIsAllowedSaysSo) {
  for (const Trial &trial : trials_of(2, 1000)) {
    EXPECT_EQ(trial.status, TrialStatus::too_large);
    EXPECT_TRUE(holds(trial.why, "of memory")) << trial.why;
  }
}

TEST_F(StudyPool, AFaultOfKeepingEndsTheRun) {
  const StudyHead begin = head();
  std::size_t kept = 0;
  const auto keep = [&](const Trial &) { return ++kept == 2 ? std::string("no room") : std::string(); };
  EXPECT_EQ(run_trials({begin, {0, 1, 2, 3}, 1, 0}, keep, {}), "no room");
  EXPECT_EQ(kept, 2u);
}

TEST_F(StudyPool, CancelledBeforehandItKeepsAtMostWhatWasUnderWay) {
  Progress progress;
  progress.cancel();
  EXPECT_LT(trials_of(1, 0, progress).size(), 4u);
}

TEST(MemoryShare, NeverHandsOutMoreThanThereIs) {
  MemoryShare share(10.0);
  const Progress progress;
  std::atomic<int> taken{0}, most{0};
  std::vector<std::thread> threads;
  for (int i = 0; i < 6; ++i)
    threads.emplace_back([&] {
      for (int k = 0; k < 50; ++k) {
        ASSERT_TRUE(share.take(4.0, progress)); // room for two
        const int now = ++taken;
        for (int seen = most; seen < now && !most.compare_exchange_weak(seen, now);) {
        }
        std::this_thread::yield();
        --taken;
        share.give_back(4.0);
      }
    });
  for (std::thread &thread : threads)
    thread.join();
  EXPECT_LE(most, 2);
  EXPECT_FALSE(share.take(10.5, progress));
}

} // namespace asperity::test_support
