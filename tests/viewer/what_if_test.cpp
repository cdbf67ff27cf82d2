// Values tried in place of the job's own: kept apart, undone, made again.
#include "small_outcome.h"
#include "what_if.h"

#include <set>

using namespace asperity;
using namespace asperity::test_support;

namespace {

constexpr const char *kRunout = "cutter.1.runout_mm";

const WhatIfKey &key_named(const std::vector<WhatIfKey> &keys, const std::string &id) {
  for (const WhatIfKey &key : keys)
    if (key.id == id)
      return key;
  throw std::runtime_error("no key " + id);
}

} // namespace

class WhatIfKeys : public Bench {};

TEST_F(WhatIfKeys, EveryKeyHasANameOfItsOwnAndTheReaderTakesIt) {
  const Job job = *bush_result()->job;
  const std::vector<WhatIfKey> keys = what_if_keys(job);
  std::set<std::string> names;
  for (const WhatIfKey &key : keys) {
    EXPECT_TRUE(names.insert(key.id).second) << key.id;
    EXPECT_FALSE(key.meaning.empty()) << key.id;
    const std::string tried = key.kind == KeyKind::toggle ? (key.own == "true" ? "false" : "true")
                                                          : toml_text(0.5 * (key.low + key.high));
    Problems problems;
    const std::vector<JobChange> changes = job_changes({{key.id, tried}});
    const auto other = read_job(job_file(), changes, problems);
    ASSERT_TRUE(other) << key.id << ": " << (problems.all().empty() ? "" : text_of(problems.all().front()));
    for (const WhatIfKey &each : what_if_keys(*other))
      if (each.id == key.id) {
        EXPECT_EQ(each.own, tried) << key.id;
      } else {
        EXPECT_EQ(each.own, key_named(keys, each.id).own) << key.id << " changes " << each.id;
      }
  }
}

TEST(WhatIf, WhatIsNoNumberIsNoChange) {
  AppState state = state_with_bush();
  for (const char *value : {"", "wide", "0.02 mm", "nan", "inf", "\"0.1\""})
    apply(state, ChangeValue{0, kRunout, value});
  apply(state, ChangeValue{0, "effects.runout", "0"});
  EXPECT_TRUE(state.seats[0].changes.empty());
}

TEST(WhatIf, AValueIsBroughtIntoItsRangeAndTheJobsOwnIsNoChange) {
  AppState state = state_with_bush();
  apply(state, ChangeValue{0, kRunout, "99"});
  EXPECT_EQ(state.seats[0].changes.at(kRunout), "1.0");
  apply(state, ChangeValue{0, kRunout, "0.02"}); // as the job says
  EXPECT_TRUE(state.seats[0].changes.empty());
  apply(state, ChangeValue{0, "cutter.7.runout_mm", "0.1"});
  EXPECT_TRUE(state.seats[0].changes.empty()) << "there is no such cutter";
}

TEST(WhatIf, UndoAndRedoWalkTheChanges) {
  AppState state = state_with_bush();
  apply(state, ChangeValue{0, kRunout, "0.04"});
  apply(state, ChangeValue{0, "setup.z_zero_error_mm", "0.1"});
  EXPECT_TRUE(state.seats[0].is_stale());
  apply(state, Undo{0});
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, "0.04"}}));
  apply(state, Undo{0});
  EXPECT_TRUE(state.seats[0].changes.empty());
  EXPECT_FALSE(state.seats[0].is_stale());
  apply(state, Undo{0}); // nothing left
  apply(state, Redo{0});
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, "0.04"}}));
  apply(state, ChangeValue{0, kRunout, "0.05"});
  apply(state, Redo{0}); // a new change ends what could be made again
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, "0.05"}}));
}

TEST(WhatIf, ALargerCutterLeavesASmallerDisc) {
  // The surface lies half the diameter error deeper all round: the disc loses all of it [plane geometry].
  const double nominal_mm = bush_result()->outcome->features[0].sizes[0].mean_mm;
  const double larger_mm = bush_with_large_cutter()->outcome->features[0].sizes[0].mean_mm;
  // A thicker cutter also bends a little less; a hundredth of the change bounds that.
  EXPECT_NEAR(nominal_mm - larger_mm, 0.1, 0.001);
}

TEST(WhatIf, SwitchesAreAsTheJobHasThem) {
  EXPECT_EQ(key_named(what_if_keys(*bush_result()->job), "effects.runout").own, "true");
}

TEST(WhatIf, APlannedPassOffersItsStepdownAndEntry) {
  Job job = *bush_result()->job;
  PlannedPass pass;
  pass.name = "levels";
  pass.stepdown_mm = 2.0;
  pass.feed_mm_per_min = 900;
  job.passes.push_back(pass);
  const std::vector<WhatIfKey> keys = what_if_keys(job);
  EXPECT_EQ(key_named(keys, "pass.1.stepdown_mm").own, "2.0");
  EXPECT_EQ(key_named(keys, "pass.1.feed_mm_per_min").own, "900.0");
  EXPECT_EQ(shown(key_named(keys, "pass.1.entry").own), "plunge");
  EXPECT_EQ(allowed(key_named(keys, "pass.1.entry"), "ramp"), "\"ramp\"");
  EXPECT_EQ(allowed(key_named(keys, "pass.1.entry"), "fall"), "");
  const auto ramped = what_if_keys(job, {{"pass.1.entry", "\"ramp\""}});
  EXPECT_EQ(key_named(ramped, "pass.1.ramp_deg").unit, "deg") << "a ramp has an angle";
}
