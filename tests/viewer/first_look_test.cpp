// First looks while the rest is being predicted: path, coarse charts, the whole; each known for what it is.
#include "background.h"
#include "requests.h"
#include "small_outcome.h"

#include "asperity/predict/chart_plan.h"

using namespace asperity;
using namespace asperity::test_support;

namespace {

std::shared_ptr<RunResult> look(Grain grain) {
  auto result = std::make_shared<RunResult>(*bush_result());
  result->grain = grain;
  return result;
}

AppState state_of(Grain grain) {
  AppState state;
  apply(state, OpenFile{0, "/workshop/bush.toml"});
  apply(state, RunStarted{0});
  apply(state, RunShows{0, look(grain)});
  return state;
}

} // namespace

class FirstLooks : public Bench {};

TEST_F(FirstLooks, ComeAsPathThenCoarseThenChartByChartThenTheWhole) {
  std::vector<std::shared_ptr<const RunResult>> looks;
  Repredictor kept;
  const RunResult whole =
      read_and_predict(job_file(), {}, 0, {}, kept, [&](auto each) { looks.push_back(each); });
  const std::size_t features = whole.outcome->charts.size();
  ASSERT_EQ(looks.size(), 2 + features);
  EXPECT_EQ(looks[0]->grain, Grain::path);
  EXPECT_TRUE(looks[0]->outcome->charts.empty());
  EXPECT_EQ(looks[0]->outcome->path.duration_s, whole.outcome->path.duration_s);
  EXPECT_FALSE(looks[0]->program_lines.empty());
  EXPECT_EQ(looks[1]->grain, Grain::coarse);
  EXPECT_EQ(whole.grain, Grain::fine);
  for (std::size_t i = 0; i < features; ++i) {
    const auto cells = [i](const Outcome &o) { return chart_cells(o.job, o.job.features[i]); };
    constexpr double kRounding = 0.02; // to whole rows and columns
    EXPECT_NEAR(cells(*whole.outcome) / cells(*looks[1]->outcome) / (kCoarser * kCoarser), 1.0, kRounding);
    const std::vector<Chart> &charts = looks[2 + i]->outcome->charts;
    EXPECT_EQ(looks[2 + i]->grain, Grain::coarse) << "not yet the whole";
    for (std::size_t k = 0; k < features; ++k)
      EXPECT_EQ(cell_count(charts[k]) == cell_count(whole.outcome->charts[k]), k <= i) << i << " " << k;
  }
  EXPECT_EQ(kept.runs().cut, 0) << "the coarse prediction has cut already";
  // The program cuts the disc to its size; four times coarser charts see the same mean to a micrometre.
  EXPECT_NEAR(looks[1]->outcome->features[0].mean_um, whole.outcome->features[0].mean_um, 1.0);
}

TEST_F(FirstLooks, AreNotMadeForAJobThatCannotBeRead) {
  write("bush.toml", "title = ");
  int count = 0;
  Repredictor kept;
  read_and_predict(job_file(), {}, 0, {}, kept, [&](const auto &) { ++count; });
  EXPECT_EQ(count, 0);
}

TEST(FirstLook, OfThePathShowsBlankAndPathAndJudgesNothing) {
  const AppState state = state_of(Grain::path);
  EXPECT_NE(state.outcome(0), nullptr);
  EXPECT_EQ(state.judged(0), nullptr);
  const DrawRequest request = space_request(state, 0, {100, 100});
  EXPECT_TRUE(request.things.blank);
  EXPECT_TRUE(request.things.path);
  EXPECT_FALSE(space_request(state_of(Grain::coarse), 0, {100, 100}).things.path);
}

TEST(FirstLook, NeverReplacesAWholePrediction) {
  AppState state = state_of(Grain::coarse);
  apply(state, RunEnded{0, bush_result()});
  const Outcome *whole = state.outcome(0);
  apply(state, Predict{0});
  apply(state, RunStarted{0});
  apply(state, RunShows{0, look(Grain::coarse)});
  EXPECT_EQ(state.outcome(0), whole);
  EXPECT_TRUE(state.seats[0].has(Grain::fine));
}

TEST(FirstLook, StaysWhenTheRunIsStoppedAndIsKnownForWhatItIs) {
  AppState state = state_of(Grain::coarse);
  apply(state, StopRun{0});
  apply(state, RunEnded{0, bush_result()});
  EXPECT_NE(state.outcome(0), nullptr);
  EXPECT_FALSE(state.seats[0].has(Grain::fine));
  EXPECT_TRUE(state.seats[0].fault.empty());
}

TEST(FirstLook, TheWeightiestFindingIsChosenWhenTheWholeIsThere) {
  AppState state = state_of(Grain::coarse);
  EXPECT_EQ(state.choice.finding, -1);
  apply(state, RunEnded{0, bush_result()});
  ASSERT_FALSE(state.outcome(0)->findings.empty());
  EXPECT_EQ(state.choice.finding, 0);
  EXPECT_FALSE(state.space.flight) << "the eye stays where it is";
}
