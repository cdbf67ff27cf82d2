// Levels: how many, how high, and where the last one ends.
#include "asperity/base/units.h"
#include "asperity/job/job_change.h"
#include "passes/planned.h"
#include "planning.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <span>
#include <utility>

namespace asperity::test {
namespace {

TEST(Levels, EqualLevelsShareTheHeightAndNeverExceedTheStepdown) {
  const auto heights = level_heights(10.0, -0.3, 3.0, LastLevel::equal); // 10.3 / 3 -> 4 of 2.575
  ASSERT_EQ(heights.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(heights[i], 10.0 - 2.575 * static_cast<double>(i + 1), 1e-12);
}

TEST(Levels, RestLeavesTheRemainderToTheLastLevel) {
  const auto heights = level_heights(10.0, -0.3, 3.0, LastLevel::rest);
  ASSERT_EQ(heights.size(), 4u);
  EXPECT_NEAR(heights[2], 1.0, 1e-12);
  EXPECT_NEAR(heights[3], -0.3, 1e-12);
}

TEST(Levels, WholeStepdownsAreNotSplitByRounding) {
  EXPECT_EQ(level_heights(13.7, -0.3, 2.0, LastLevel::equal).size(), 7u);
  EXPECT_EQ(level_heights(0.3, 0.0, 0.1, LastLevel::rest).size(), 3u);
  EXPECT_EQ(level_heights(10.0, 0.0, 0.0, LastLevel::equal), std::vector<double>{0.0});
}

TEST(Levels, EveryLevelIsOneFullLapAtItsHeight) {
  // Program zero lies 10 mm up: part z - 10. Axis radius 20 + 3.
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 3.0\novercut_mm = 0.3\nentry = \"plunge\""));
  for (int i = 1; i <= 4; ++i) {
    double length_mm = 0.0;
    for (const Move &move : level_moves(plan.program, -2.575 * i))
      length_mm += move.curve.is_line() ? 0.0 : move.curve.length_mm();
    EXPECT_NEAR(length_mm, 2 * kPi * 23.0, 1e-4) << i;
  }
  EXPECT_EQ(plan.plan.passes.at(0).levels, 4u);
}

TEST(Levels, NothingGoesBelowTheOvercut) {
  for (const char *entry : {"\"plunge\"", "\"helix\"", "\"zigzag\"", "\"ramp\"\nramp_deg = 3",
                            "\"zigzag\"\nzigzag_mm = 20\nramp_deg = 3", "\"arc\"\nlead_radius_mm = 4"}) {
    const auto plan =
        planned(wall_pass("rim", std::string("stepdown_mm = 3.0\novercut_mm = 0.3\nentry = ") + entry));
    double lowest = 1e9;
    for (const Move &move : plan.program.moves)
      lowest = std::min({lowest, move.curve.begin.z, move.curve.end.z});
    EXPECT_NEAR(lowest, -10.3, kText_mm) << entry;
    double lap_mm = 0.0;
    for (const Move &move : level_moves(plan.program, -10.3))
      if (!move.curve.is_line() && std::abs(move.curve.radius_mm - 23.0) < 1e-4)
        lap_mm += move.curve.length_mm();
    EXPECT_GT(lap_mm, 2 * kPi * 23.0 - 1e-4) << "the bottom is cut all round: " << entry;
  }
}

TEST(Levels, AllowanceIsLeftByTheLevelsAndTakenByTheFinish) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 4.0\nallowance_mm = 0.4\nspring_laps = 2\n"
                                             "finish = { feed_mm_per_min = 700 }\nentry = \"plunge\""));
  std::map<long, int> laps; // by radius in micrometres
  for (const Move &move : feed_moves(plan.program))
    if (!move.curve.is_line()) {
      ++laps[std::lround(move.curve.radius_mm * 1000)];
      if (move.curve.radius_mm < 23.2) {
        EXPECT_EQ(move.feed_mm_per_min, 700);
        EXPECT_NEAR(move.curve.begin.z, -10.0, kText_mm) << "the full height at once";
      }
    }
  EXPECT_EQ(laps[23400], 3);
  EXPECT_EQ(laps[23000], 1 + 2) << "one finish lap and two spring laps";
}

TEST(Levels, FinishMayHaveItsOwnStepdown) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 10.0\nallowance_mm = 0.4\n"
                                             "finish = { stepdown_mm = 2.5 }\nentry = \"plunge\""));
  int finish_laps = 0;
  for (const Move &move : feed_moves(plan.program))
    finish_laps += !move.curve.is_line() && std::abs(move.curve.radius_mm - 23.0) < 1e-4 ? 1 : 0;
  EXPECT_EQ(finish_laps, 4);
}

TEST(Levels, AChangedKeyOfAPassIsPlannedAnew) {
  // Passes are addressed like any other list of the job: what a study varies.
  const std::string file = ASPERITY_SOURCE_DIR "/scenes/sheave/planned-plunge.toml";
  for (const auto &[value, levels] : {std::pair("7.0", 2u), std::pair("1.0", 14u)}) {
    const JobChange changes[] = {
        {"pass.2.stepdown_mm", value}, {"pass.2.entry", "\"arc\""}, {"pass.2.lead_radius_mm", "3.0"}};
    Problems problems;
    auto job = read_job(file, std::span(changes).first(1), problems);
    ASSERT_TRUE(job);
    const auto plan = plan_passes(*job, problems);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->passes.at(1).levels, levels);
    // approach_mm belongs to a plunge, not to an arc: the change is answered as a file would be.
    EXPECT_FALSE(read_job(file, changes, problems).has_value());
  }
}

} // namespace
} // namespace asperity::test
