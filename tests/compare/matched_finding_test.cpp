// Findings of two plans matched by the stated rule.
#include "asperity/compare/matched_finding.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

Outcome outcome_with(std::vector<Finding> findings) {
  Outcome outcome = test_support::rim_outcome();
  outcome.findings = std::move(findings);
  return outcome;
}

Finding finding_of(FindingKind kind, Weight weight, Quantity size) {
  Finding finding;
  finding.kind = kind;
  finding.weight = weight;
  finding.size = {std::move(size)};
  return finding;
}

Finding line_at(double x_mm, double depth_um, Weight weight = Weight::flaw) {
  Finding line = finding_of(FindingKind::witness_line, weight, {"depth", depth_um, "um"});
  line.feature = 0;
  line.place_mm = {x_mm, 0.0, 5.0};
  return line;
}

Finding lip_at(double x_mm, double height_mm) {
  Finding lip = finding_of(FindingKind::base_lip, Weight::flaw, {"height", height_mm, "mm"});
  lip.feature = 0;
  lip.place_mm = {x_mm, 0.0, 0.0};
  return lip;
}

Change only_change(const Finding &a, const Finding &b) {
  const auto matched = matched_findings(outcome_with({a}), outcome_with({b}));
  EXPECT_EQ(matched.size(), 1u);
  return matched.at(0).change;
}

TEST(MatchedFindings, LinesWithinThreeMillimetresAreOne) {
  EXPECT_EQ(only_change(line_at(31.0, 6.0), line_at(33.9, 3.0)), Change::better);
  const auto apart = matched_findings(outcome_with({line_at(31.0, 6.0)}), outcome_with({line_at(34.1, 3.0)}));
  ASSERT_EQ(apart.size(), 2u);
  EXPECT_EQ(apart[0].change, Change::gone);
  EXPECT_EQ(apart[1].change, Change::fresh);
  EXPECT_EQ(apart[1].first, -1);
}

TEST(MatchedFindings, TheNearestPairIsTakenFirst) {
  const auto matched = matched_findings(outcome_with({line_at(31.0, 6.0), line_at(29.5, 6.0)}),
                                        outcome_with({line_at(29.6, 6.0), line_at(32.0, 6.0)}));
  ASSERT_EQ(matched.size(), 2u);
  EXPECT_EQ(matched[0].other, 1);
  EXPECT_EQ(matched[1].other, 0);
}

TEST(MatchedFindings, ALipIsOneWhereverItIsHighest) {
  EXPECT_EQ(only_change(lip_at(31.0, 0.6), lip_at(-31.0, 0.7)), Change::worse);
}

TEST(MatchedFindings, FivePercentIsTheSame) {
  EXPECT_EQ(only_change(line_at(31, 6.0), line_at(31, 6.3)), Change::same);
  EXPECT_EQ(only_change(line_at(31, 6.0), line_at(31, 6.33)), Change::worse);
  EXPECT_EQ(only_change(line_at(31, 6.33), line_at(31, 6.0)), Change::better);
}

TEST(MatchedFindings, WeightComesBeforeSize) {
  EXPECT_EQ(only_change(line_at(31, 6.0, Weight::flaw), line_at(31, 9.0, Weight::note)), Change::better);
  EXPECT_EQ(only_change(line_at(31, 6.0, Weight::note), line_at(31, 2.0, Weight::flaw)), Change::worse);
}

TEST(MatchedFindings, ALargerMarginIsBetter) {
  const auto slip = [](double margin) {
    return finding_of(FindingKind::hold_down_may_slip, Weight::danger, {"margin", margin, ""});
  };
  EXPECT_EQ(only_change(slip(1.2), slip(1.8)), Change::better);
  EXPECT_EQ(only_change(slip(1.8), slip(1.2)), Change::worse);
}

TEST(MatchedFindings, KindsAndFeaturesAreKeptApart) {
  Finding elsewhere = lip_at(31.0, 0.6);
  elsewhere.feature = -1;
  EXPECT_EQ(matched_findings(outcome_with({lip_at(31, 0.6)}), outcome_with({elsewhere})).size(), 2u);
  EXPECT_EQ(matched_findings(outcome_with({lip_at(31, 0.6)}), outcome_with({line_at(31, 6)})).size(), 2u);
}

} // namespace
} // namespace asperity
