// The choice and what each plan is best at, on tables written by hand.
#include "asperity/compare/choice.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

ComparedPlan plan_with(std::size_t missed, std::size_t dangers, double time_s) {
  ComparedPlan plan;
  plan.checks = 4;
  plan.missed = missed;
  plan.dangers = dangers;
  plan.time_s = time_s;
  return plan;
}

Choice choice_of(std::vector<ComparedPlan> plans) {
  Comparison comparison;
  comparison.plans = std::move(plans);
  return choose(comparison);
}

TEST(Choice, OneThatMeetsAllIsTaken) {
  const Choice choice = choice_of({plan_with(1, 0, 60), plan_with(0, 0, 300), plan_with(0, 1, 30)});
  EXPECT_EQ(choice.reason, ChoiceReason::only_fit);
  EXPECT_EQ(choice.plan, 1u);
  EXPECT_TRUE(choice.also_fit.empty());
}

TEST(Choice, OfSeveralTheQuickestIsTaken) {
  const Choice choice = choice_of({plan_with(0, 0, 300), plan_with(0, 0, 200), plan_with(2, 0, 10)});
  EXPECT_EQ(choice.reason, ChoiceReason::quickest_fit);
  EXPECT_EQ(choice.plan, 1u);
  EXPECT_EQ(choice.also_fit, std::vector<std::size_t>{0});
}

TEST(Choice, EquallyQuickOnesAreCalledSo) {
  const Choice choice = choice_of({plan_with(0, 0, 200.0), plan_with(0, 0, 200.4)});
  EXPECT_EQ(choice.reason, ChoiceReason::equally_quick);
  EXPECT_EQ(choice.plan, 0u);
}

TEST(Choice, WhereNoneMeetsAllTheLeastMissedIsNamed) {
  const Choice choice = choice_of({plan_with(3, 0, 60), plan_with(1, 0, 300), plan_with(0, 1, 10)});
  EXPECT_EQ(choice.reason, ChoiceReason::least_missed);
  EXPECT_EQ(choice.plan, 1u);
}

TEST(Choice, DangerousPlansAreNeverChosen) {
  const Choice choice = choice_of({plan_with(0, 1, 60), plan_with(0, 2, 300)});
  EXPECT_EQ(choice.reason, ChoiceReason::none_safe);
  EXPECT_FALSE(choice.plan);
}

ComparedNumber lip(std::vector<double> values_mm) {
  ComparedNumber row{{"rim/lip_mm", "rim", "lip", "mm", values_mm[0], Better::lower, 0}, {}, {}};
  for (const double value : values_mm) {
    KeyNumber number = row.number;
    number.value = value;
    row.of.push_back(number);
    row.difference.push_back(std::nullopt);
  }
  for (std::size_t k = 1; k < values_mm.size(); ++k) {
    const double d = values_mm[k] - values_mm[0];
    row.difference[k] = Difference{d,
                                   d < 0   ? Standing::better
                                   : d > 0 ? Standing::worse
                                           : Standing::same,
                                   {}};
  }
  return row;
}

std::vector<std::vector<std::size_t>> best_of(const ComparedNumber &row) {
  Comparison comparison;
  comparison.plans.resize(row.of.size());
  comparison.numbers = {row};
  return best_at(comparison);
}

using Rows = std::vector<std::size_t>;

TEST(BestAt, TheLowestLipWinsAgainstAllOthers) {
  EXPECT_EQ(best_of(lip({0.3, 0.1, 0.2})), (std::vector<Rows>{{}, {0}, {}}));
  EXPECT_EQ(best_of(lip({0.1, 0.2, 0.3})), (std::vector<Rows>{{0}, {}, {}}));
}

TEST(BestAt, ATieHasNoWinner) { EXPECT_EQ(best_of(lip({0.3, 0.1, 0.1})), (std::vector<Rows>{{}, {}, {}})); }

TEST(BestAt, WithinTheUncertaintyNoneIsBest) {
  ComparedNumber row = lip({0.3, 0.1});
  row.difference[1]->spread = DifferenceBand{-0.5, 0.1};
  row.difference[1]->standing = Standing::same;
  EXPECT_EQ(best_of(row), (std::vector<Rows>{{}, {}}));
  // B and C both certainly beat A, yet cannot be told from each other: 0.05 apart, each known to 0.04.
  ComparedNumber three = lip({0.5, 0.15, 0.10});
  three.difference[1]->spread = DifferenceBand{-0.39, -0.31};
  three.difference[2]->spread = DifferenceBand{-0.44, -0.36};
  EXPECT_EQ(best_of(three), (std::vector<Rows>{{}, {}, {}}));
  three.difference[1]->spread = DifferenceBand{-0.36, -0.34};
  three.difference[2]->spread = DifferenceBand{-0.41, -0.39};
  EXPECT_EQ(best_of(three), (std::vector<Rows>{{}, {}, {0}}));
}

TEST(BestAt, ANumberThatOnlyInformsHasNoWinner) {
  ComparedNumber row = lip({0.3, 0.1});
  for (auto &number : row.of)
    number->better = Better::neither;
  row.number.better = Better::neither;
  EXPECT_EQ(best_of(row), (std::vector<Rows>{{}, {}}));
}

} // namespace
} // namespace asperity
