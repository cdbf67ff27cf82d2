// Work beside the window: it brings its result, and it may be left in the middle.
#include "background.h"
#include "small_outcome.h"

#include <chrono>
#include <condition_variable>

using namespace asperity;
using namespace asperity::test_support;

namespace {

/// Far longer than any of these runs takes; only a hang reaches it.
constexpr std::chrono::seconds kHangs{120};

struct Bell {
  std::mutex mutex;
  std::condition_variable rung;
  int count = 0;

  std::function<void()> ringer() {
    return [this] {
      const std::lock_guard lock(mutex);
      ++count;
      rung.notify_all();
    };
  }
  void wait() {
    std::unique_lock lock(mutex);
    EXPECT_TRUE(rung.wait_for(lock, kHangs, [this] { return count > 0; }));
    count = 0;
  }
};

std::shared_ptr<const RunResult> wait_for_result(BackgroundRun &run, Bell &bell) {
  for (;;) {
    bell.wait();
    if (const auto news = run.news(); news && news->is_end)
      return news->result;
  }
}

} // namespace

class Background : public Bench {};

TEST_F(Background, ARunBringsOutcomeTextAndChanges) {
  Bell bell;
  BackgroundRun run(bell.ringer());
  run.start({job_file(), {{"cutter.1.runout_mm", "0.0"}}});
  const auto result = wait_for_result(run, bell);
  ASSERT_TRUE(result->outcome);
  EXPECT_EQ(result->outcome->status, Status::done);
  EXPECT_EQ(result->outcome->job.cutters[0].runout_mm, 0.0);
  EXPECT_EQ(result->job->cutters[0].runout_mm, 0.02) << "the job as read stays";
  EXPECT_EQ(result->program_lines[8], "G2 X13 Y0 I-13 J0 F900");
  EXPECT_EQ(result->job_text, job_text());
  EXPECT_FALSE(run.is_busy());
}

TEST_F(Background, AMalformedJobBringsItsProblems) {
  write("bush.toml", "title = [unfinished\n\x01\xff");
  Bell bell;
  BackgroundRun run(bell.ringer());
  run.start({job_file(), {}});
  const auto result = wait_for_result(run, bell);
  EXPECT_FALSE(result->outcome);
  ASSERT_FALSE(result->problems.empty());
  EXPECT_EQ(result->problems.front().severity, Severity::error);
}

TEST_F(Background, AHugeJobIsRefusedWithItsReason) {
  std::string text = job_text();
  text.replace(text.find("wall_spacing_mm = 0.1"), 21, "wall_spacing_mm = 0.0005");
  text.replace(text.find("floor_spacing_mm = 0.2"), 22, "floor_spacing_mm = 0.0005");
  for (const std::string plain : {"diameter_mm = 20.8", "diameter_mm = 20.0", "diameter_mm = 20.0"})
    text.replace(text.find(plain), plain.size(), "diameter_mm = 200.0"); // 2.5 TB of chart
  write("bush.toml", text);
  Bell bell;
  BackgroundRun run(bell.ringer());
  run.start({job_file(), {}});
  const auto result = wait_for_result(run, bell);
  ASSERT_TRUE(result->outcome);
  EXPECT_EQ(result->outcome->status, Status::too_large);
  EXPECT_FALSE(result->outcome->why.empty());
}

TEST_F(Background, LeavingInTheMiddleEndsTheThread) {
  Bell bell;
  {
    BackgroundRun run(bell.ringer());
    run.start({job_file(), {}});
    bell.wait(); // it has begun
  }
  SUCCEED() << "the run was told to stop and waited for";
}

TEST_F(Background, AStoppedRunBringsNoFinishedOutcome) {
  Bell bell;
  BackgroundRun run(bell.ringer());
  run.start({job_file(), {}});
  run.stop();
  const auto result = wait_for_result(run, bell);
  EXPECT_TRUE(!result->outcome || result->outcome->status == Status::cancelled);
}

TEST_F(Background, ATraceIsLaidAndAMissSaysWhy) {
  const Outcome &outcome = *bush_result()->outcome;
  LaidTrace laid = traced(
      outcome, 0, {.along = "s", .at_mm = 1.0, .from_mm = 5.0, .length_mm = 4.8, .cutoff_mm = {}}, 0, {});
  ASSERT_TRUE(laid.trace);
  EXPECT_GT(laid.trace->reading.parameters.ra_mm, 0.0);
  laid = traced(outcome, 0, {.along = "s", .at_mm = 99.0, .length_mm = 4.8, .cutoff_mm = {}}, 0, {});
  EXPECT_FALSE(laid.trace);
  EXPECT_FALSE(laid.why.empty());
}

TEST_F(Background, AStoppedTraceBringsNothing) {
  Progress progress;
  progress.cancel();
  const LaidTrace laid = traced(*bush_result()->outcome, 0,
                                {.along = "s", .at_mm = 1.0, .length_mm = {}, .cutoff_mm = {}}, 0, progress);
  EXPECT_FALSE(laid.trace);
  EXPECT_TRUE(laid.why.empty());
}

TEST_F(Background, ATaskBringsItsResultOnceAndMayBeLeftInTheMiddle) {
  Bell bell;
  BackgroundTask<int> task(bell.ringer());
  task.start([](const Progress &) { return 7; });
  bell.wait();
  EXPECT_EQ(task.fetch(), 7);
  EXPECT_FALSE(task.fetch());
  EXPECT_FALSE(task.is_busy());
  task.start([](const Progress &progress) {
    while (!progress.cancelled())
      std::this_thread::yield();
    return 8;
  });
  EXPECT_TRUE(task.is_busy());
}

TEST_F(Background, AChangeOutOfRangeIsAProblemThatNamesIt) {
  Repredictor kept;
  const RunResult result = read_and_predict(job_file(), {{"cutter.1.flutes", "-3"}}, 0, {}, kept);
  EXPECT_FALSE(result.outcome);
  ASSERT_FALSE(result.problems.empty());
  EXPECT_NE(text_of(result.problems.front()).find("cutter.1.flutes"), std::string::npos);
}
