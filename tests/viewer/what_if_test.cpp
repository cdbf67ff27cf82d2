// Values tried in place of the job's own: kept apart, undone, made again.
#include "small_outcome.h"
#include "what_if.h"

#include <set>

using namespace asperity;
using namespace asperity::test_support;

namespace {

constexpr const char *kRunout = "cutter.0.runout_mm";

const WhatIfKey &key_named(const std::vector<WhatIfKey> &keys, const std::string &id) {
  for (const WhatIfKey &key : keys)
    if (key.id == id)
      return key;
  throw std::runtime_error("no key " + id);
}

} // namespace

TEST(WhatIf, EveryKeyHasANameOfItsOwnAndSetsOnlyItself) {
  const Job job = *bush_result()->job;
  const std::vector<WhatIfKey> keys = what_if_keys(job);
  std::set<std::string> names;
  for (const WhatIfKey &key : keys) {
    EXPECT_TRUE(names.insert(key.id).second) << key.id;
    EXPECT_FALSE(key.meaning.empty()) << key.id;
    const double wanted = key.is_switch ? 1.0 - key.value_of(job) : 0.5 * (key.low + key.high);
    const Job other = changed(job, {{key.id, wanted}});
    for (const WhatIfKey &each : keys)
      EXPECT_EQ(each.value_of(other), each.id == key.id ? wanted : each.value_of(job))
          << key.id << " changes " << each.id;
  }
}

TEST(WhatIf, AValueIsBroughtIntoItsRangeAndTheJobsOwnIsNoChange) {
  AppState state = state_with_bush();
  apply(state, ChangeValue{0, kRunout, 99});
  EXPECT_EQ(state.seats[0].changes.at(kRunout), 1.0);
  apply(state, ChangeValue{0, kRunout, 0.02}); // as the job says
  EXPECT_TRUE(state.seats[0].changes.empty());
  apply(state, ChangeValue{0, "cutter.7.runout_mm", 0.1});
  EXPECT_TRUE(state.seats[0].changes.empty()) << "there is no such cutter";
}

TEST(WhatIf, UndoAndRedoWalkTheChanges) {
  AppState state = state_with_bush();
  apply(state, ChangeValue{0, kRunout, 0.04});
  apply(state, ChangeValue{0, "setup.z_zero_error_mm", 0.1});
  EXPECT_TRUE(state.seats[0].is_stale());
  apply(state, Undo{0});
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, 0.04}}));
  apply(state, Undo{0});
  EXPECT_TRUE(state.seats[0].changes.empty());
  EXPECT_FALSE(state.seats[0].is_stale());
  apply(state, Undo{0}); // nothing left
  apply(state, Redo{0});
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, 0.04}}));
  apply(state, ChangeValue{0, kRunout, 0.05});
  apply(state, Redo{0}); // a new change ends what could be made again
  EXPECT_EQ(state.seats[0].changes, (Changes{{kRunout, 0.05}}));
}

TEST(WhatIf, ALargerCutterLeavesASmallerDisc) {
  // The surface lies half the diameter error deeper all round: the disc loses all of it [plane geometry].
  const double nominal_mm = bush_result()->outcome->features[0].sizes[0].mean_mm;
  const double larger_mm = bush_with_large_cutter()->outcome->features[0].sizes[0].mean_mm;
  // A thicker cutter also bends a little less; a hundredth of the change bounds that.
  EXPECT_NEAR(nominal_mm - larger_mm, 0.1, 0.001);
}

TEST(WhatIf, SwitchesAreAsTheJobHasThem) {
  const Job job = *bush_result()->job;
  const std::vector<WhatIfKey> keys = what_if_keys(job);
  EXPECT_EQ(key_named(keys, "effects.runout").value_of(job), 1.0);
  EXPECT_FALSE(changed(job, {{"effects.runout", 0.0}}).effects.runout);
}
