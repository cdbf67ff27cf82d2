// The best plan, the nearest one, and its job's text.
#include "asperity/study/best_plan.h"

#include "study/folder.h"

#include <cmath>

namespace asperity {

using test_support::small_head;
using test_support::trial_with;

namespace {

StudyResults results_of(std::vector<Trial> trials) { return {small_head(), std::move(trials)}; }

} // namespace

TEST(BestPlan, IsTheFastestThatMeetsEverything) {
  const BestPlan plan = best_plan(
      results_of({trial_with(0, 60, 9), trial_with(1, 90, 3), trial_with(2, 80, 4), trial_with(3, 70, 4.1)}));
  ASSERT_TRUE(plan.best);
  EXPECT_EQ(*plan.best, 2u);
  EXPECT_FALSE(plan.nearest);
  EXPECT_EQ(plan.well_count, 2u);
}

TEST(BestPlan, OfEquallyFastOnesTheBetterFinishIsTaken) {
  EXPECT_EQ(best_plan(results_of({trial_with(0, 60, 3), trial_with(1, 60, 2), trial_with(2, 60, 2.5)})).best,
            std::optional<std::size_t>(1));
}

TEST(BestPlan, ADangerOrAWrongTrialIsNeverTheBest) {
  StudyResults results = results_of({trial_with(0, 60, 1), trial_with(1, 90, 3), trial_with(2, 50, 1)});
  results.trials[0].dangers = 1;
  results.trials[2].status = TrialStatus::wrong;
  EXPECT_EQ(best_plan(results).best, std::optional<std::size_t>(1));
}

TEST(BestPlan, WithoutAnyTheNearestMissesByTheLeast) {
  StudyResults results = results_of({trial_with(0, 60, 9), trial_with(1, 90, 5), trial_with(2, 80, 5)});
  const BestPlan plan = best_plan(results);
  EXPECT_FALSE(plan.best);
  EXPECT_EQ(plan.nearest, std::optional<std::size_t>(2)) << "as near as the second, and faster";
  results.trials[1].dangers = results.trials[2].dangers = 1;
  EXPECT_EQ(best_plan(results).nearest, std::optional<std::size_t>(0)) << "rather a miss than a danger";
  EXPECT_FALSE(best_plan(results_of({})).nearest);
}

TEST(BestPlan, ExtraLimitsCountLikeWantedValues) {
  const StudyResults results = results_of({trial_with(0, 60, 3), trial_with(1, 90, 1)});
  Problems problems;
  const auto limit = read_limit("rim/witness_depth_um=2", true, results, problems);
  ASSERT_TRUE(limit);
  EXPECT_EQ(best_plan(results, {*limit}).best, std::optional<std::size_t>(1));
  const auto missed = missed_checks(results.trials[0], {*limit});
  ASSERT_EQ(missed.size(), 1u);
  EXPECT_NEAR(missed[0].shortfall, 0.5, 1e-12); // (3 - 2) / 2
  const auto least = read_limit("time_s=70", false, results, problems);
  EXPECT_EQ(best_plan(results, {*least}).best, std::optional<std::size_t>(1));
  for (const char *text : {"rim/depth=2", "time_s", "time_s=", "time_s=x", "=3", "time_s=nan", "time_s=1x"}) {
    Problems wrong;
    EXPECT_FALSE(read_limit(text, true, results, wrong)) << text;
    EXPECT_EQ(wrong.error_count(), 1u) << text;
  }
}

TEST(BestPlan, JobTextHasTheValuesAndKeepsTheRest) {
  Problems problems;
  const auto text = job_text_of(small_head(), 5, "/workshop/best.toml", problems);
  ASSERT_TRUE(text) << text_of(problems.all().front());
  EXPECT_EQ(*text,
            "title = \"Line sheave\"\nprogram = \"zigzag.ngc\" # beside\n\n[[cutter]]\nrunout_mm = 0.02\n"
            "number = 1\n");
  StudyHead head = small_head();
  head.job_text = "include = \"petg.toml\"\n" + head.job_text;
  const auto moved = job_text_of(head, 0, "/workshop/plans/best.toml", problems);
  ASSERT_TRUE(moved);
  EXPECT_NE(moved->find("include = \"../petg.toml\""), std::string::npos) << *moved;
  EXPECT_NE(moved->find("program = \"../plunge.ngc\" # beside"), std::string::npos) << *moved;
}

} // namespace asperity
