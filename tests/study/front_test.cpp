// The front against a hand-made case and against comparing every pair.
#include "asperity/study/front.h"

#include "study/folder.h"

#include <gtest/gtest.h>

#include <random>

namespace asperity {

using test_support::small_head;
using test_support::trial_with;

namespace {

/// The definition itself.
std::vector<bool> by_every_pair(const std::vector<MeritPair> &points) {
  std::vector<bool> on_front;
  for (const MeritPair &p : points) {
    bool is_beaten = false;
    for (const MeritPair &q : points)
      is_beaten = is_beaten || (q.a >= p.a && q.b >= p.b && (q.a > p.a || q.b > p.b));
    on_front.push_back(!is_beaten);
  }
  return on_front;
}

} // namespace

TEST(Front, HandMadePlansOnPaper) {
  // Time and depth, less is better: (60, 9), (80, 4), (100, 4), (100, 2), (120, 3), (80, 4).
  // derived: 100 s with 4 um loses to 80 s with 4 um; 120 s with 3 um loses to 100 s with 2 um; equals stay.
  const std::vector<MeritPair> plans{{-60, -9}, {-80, -4}, {-100, -4}, {-100, -2}, {-120, -3}, {-80, -4}};
  EXPECT_EQ(best_possible(plans), (std::vector<bool>{true, true, false, true, false, true}));
  EXPECT_TRUE(best_possible({}).empty());
}

TEST(Front, EqualsComparingEveryPair) {
  std::mt19937 random(20);
  for (int round = 0; round < 400; ++round) {
    std::vector<MeritPair> points(1 + random() % 60);
    const unsigned steps = round % 2 == 0 ? 6 : 100000; // with many ties, and almost without
    for (MeritPair &point : points)
      point = {static_cast<double>(random() % steps), static_cast<double>(random() % steps)};
    EXPECT_EQ(best_possible(points), by_every_pair(points)) << round;
  }
}

TEST(Front, TakesTheBetterSideOfEachNumber) {
  StudyResults results{small_head(), {trial_with(0, 100, 5), trial_with(1, 200, 3), trial_with(2, 300, 4)}};
  std::string fault;
  const Front front = front_of(results, "time_s", "rim/witness_depth_um", fault);
  EXPECT_TRUE(fault.empty()) << fault;
  ASSERT_EQ(front.points.size(), 3u);
  EXPECT_TRUE(front.points[0].is_on_front && front.points[1].is_on_front && !front.points[2].is_on_front);
  for (Trial &trial : results.trials)
    trial.numbers[2].better = Better::higher;
  const Front upside_down = front_of(results, "time_s", "rim/witness_depth_um", fault);
  EXPECT_TRUE(upside_down.points[0].is_on_front);
  EXPECT_FALSE(upside_down.points[1].is_on_front || upside_down.points[2].is_on_front);
}

TEST(Front, NumbersWithoutABetterSideHaveNone) {
  StudyResults results{small_head(), {trial_with(0, 100, 5), trial_with(1, 200, 3)}};
  for (Trial &trial : results.trials)
    trial.numbers[2].better = Better::neither;
  std::string fault;
  const Front front = front_of(results, "time_s", "rim/witness_depth_um", fault);
  EXPECT_FALSE(front.has_direction);
  EXPECT_FALSE(front.points[0].is_on_front || front.points[1].is_on_front);
}

TEST(Front, TrialsWithoutTheNumberAreCounted) {
  StudyResults results{small_head(), {trial_with(0, 100, 5), trial_with(1, 200, 3)}};
  results.trials[1].numbers.pop_back();
  std::string fault;
  EXPECT_EQ(front_of(results, "time_s", "rim/witness_depth_um", fault).left_out, 1u);
  front_of(results, "time_s", "rim/ra_um", fault);
  EXPECT_NE(fault.find("no result is called rim/ra_um: choose from time_s, rim/diameter_mm"),
            std::string::npos)
      << fault;
}

TEST(Front, UprightAxisIsTheWantedFinishThatDiffers) {
  StudyResults results{small_head(), {trial_with(0, 100, 5), trial_with(1, 200, 3)}};
  EXPECT_EQ(default_x(results), "time_s");
  EXPECT_EQ(default_y(results), "rim/witness_depth_um");
  results.trials[1] = trial_with(1, 200, 5);
  results.trials[1].numbers[1].value = 62.5; // only the diameter differs
  EXPECT_EQ(default_y(results), "rim/diameter_mm");
}

} // namespace asperity
