// The choice in words, on outcomes written by hand.
#include "asperity/sheet/answer.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <array>

namespace asperity {
namespace {

Outcome plan_with(bool is_met, double time_s, const std::string &title = "Line sheave, a plan") {
  Outcome outcome = test_support::rim_outcome();
  outcome.job.title = title;
  outcome.findings.clear();
  outcome.checks = {{"rim", "lip height", "at most 0.05 mm", is_met ? 0.0 : 0.6, "mm", is_met}};
  outcome.path.duration_s = time_s;
  return outcome;
}

Answer answer_for(const std::vector<Outcome> &outcomes) {
  std::vector<const Outcome *> all;
  for (const Outcome &outcome : outcomes)
    all.push_back(&outcome);
  return answer_of(compare(all), all);
}

TEST(Answer, NamesTheOnlyPlanThatMeetsAll) {
  const Answer answer = answer_for({plan_with(false, 100), plan_with(true, 160)});
  EXPECT_EQ(answer.headline, "Take plan B: it alone meets everything wanted.");
  ASSERT_EQ(answer.reasons.size(), 2u);
  EXPECT_EQ(answer.reasons[0], "Plan B takes 2 min 40 s on the machine, 1 min 00 s longer than A.");
  EXPECT_EQ(answer.reasons[1],
            "Plan A misses 1 of 1 wanted: rim, lip height: 0.600 mm, wanted at most 0.05 mm.");
}

TEST(Answer, OfTwoThatDoTheQuickerIsTaken) {
  const Answer answer = answer_for({plan_with(true, 160), plan_with(true, 100), plan_with(false, 20)});
  EXPECT_EQ(answer.headline, "Take plan B: A and B meet everything wanted, and B is the quickest.");
}

TEST(Answer, OnePlanAloneIsJudged) {
  EXPECT_EQ(answer_for({plan_with(true, 10)}).headline, "This plan meets everything wanted.");
  EXPECT_EQ(answer_for({plan_with(false, 10)}).headline, "This plan misses 1 of 1 wanted.");
}

TEST(Answer, DangerIsSaidBeforeAllElse) {
  Outcome outcome = plan_with(true, 10);
  Finding touched;
  touched.kind = FindingKind::keep_out_touched;
  touched.weight = Weight::danger;
  touched.where = "at the bolt";
  outcome.findings = {touched};
  const Answer answer = answer_for({outcome});
  EXPECT_EQ(answer.headline, "Do not run this plan as it is: a danger was found.");
  EXPECT_NE(answer.reasons.at(0).find("keep-out touched (at the bolt)"), std::string::npos);
}

TEST(BestAtSentence, SaysWhatEachIsBestAtAndWhenNoneIs) {
  const Outcome a = plan_with(true, 100), b = plan_with(true, 200);
  const std::array both{&a, &b};
  EXPECT_EQ(best_at_sentence(compare(both)),
            "Best, plan A at time on the machine (uncertainty not asked for).");
  const std::array same{&a, &a};
  EXPECT_EQ(best_at_sentence(compare(same)),
            "No plan is best at anything: the predicted numbers are the same.");
  Comparison known = compare(both);
  apply_bands(known, 1, std::array{NumberBand{"time_s", {-5.0, 205.0}}});
  EXPECT_EQ(best_at_sentence(known),
            "No plan is best at anything: all differences lie within the uncertainty.");
}

TEST(CommonTitle, IsWhatTheTitlesShareInWholeWords) {
  const Outcome a = plan_with(true, 1, "Line sheave, levels entered by plunging"),
                b = plan_with(true, 1, "Line sheave, levels that zigzag"),
                c = plan_with(true, 1, "Dial bezel");
  EXPECT_EQ(common_title(std::array{&a, &b}), "Line sheave, levels");
  EXPECT_EQ(common_title(std::array{&a, &c}), a.job.title);
  EXPECT_EQ(common_title(std::array{&a}), a.job.title);
}

TEST(SignedText, ShowsTheSignUnlessNothingIsLeft) {
  EXPECT_EQ(signed_text(0.1, "mm"), "+0.100 mm");
  EXPECT_EQ(signed_text(-12.0, "s"), "-12 s");
  EXPECT_EQ(signed_text(-0.0001, "mm"), "0.000 mm");
}

} // namespace
} // namespace asperity
