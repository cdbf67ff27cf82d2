// Which plan to take, and what each is best at.
#include "asperity/compare/choice.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double flaws_of(const Comparison &comparison, std::size_t plan) {
  for (const ComparedNumber &row : comparison.numbers)
    if (row.number.id == "flaws" && row.of[plan])
      return row.of[plan]->value;
  return 0.0;
}

bool is_quicker(const ComparedPlan &a, const ComparedPlan &b) {
  return b.time_s - a.time_s > 2.0 * resolution("s");
}

Choice choose_fit(const Comparison &comparison, std::vector<std::size_t> fit) {
  const auto &plans = comparison.plans;
  std::size_t best = fit.front();
  for (const std::size_t plan : fit)
    if (is_quicker(plans[plan], plans[best]) ||
        (!is_quicker(plans[best], plans[plan]) && flaws_of(comparison, plan) < flaws_of(comparison, best)))
      best = plan;
  Choice choice{.reason = ChoiceReason::only_fit, .plan = best, .also_fit = {}};
  std::erase(fit, best);
  if (!fit.empty()) {
    const bool is_quickest =
        std::all_of(fit.begin(), fit.end(), [&](std::size_t k) { return is_quicker(plans[best], plans[k]); });
    choice.reason = is_quickest ? ChoiceReason::quickest_fit : ChoiceReason::equally_quick;
  }
  choice.also_fit = std::move(fit);
  return choice;
}

/// How far apart two plans may be by chance, from their spreads against the first plan.
double doubt(const ComparedNumber &row, std::size_t plan) {
  if (plan == 0 || !row.difference[plan] || !row.difference[plan]->spread)
    return 0.0;
  const Difference &difference = *row.difference[plan];
  return std::max(difference.spread->high - difference.value, difference.value - difference.spread->low);
}

bool is_better(const ComparedNumber &row, std::size_t plan, std::size_t than) {
  const double gain = merit(*row.of[plan]) - merit(*row.of[than]);
  if (gain <= resolution(row.number.unit))
    return false;
  if (than == 0)
    return row.difference[plan] && row.difference[plan]->standing == Standing::better;
  if (plan == 0)
    return row.difference[than] && row.difference[than]->standing == Standing::worse;
  return std::abs(row.of[plan]->value - row.of[than]->value) > doubt(row, plan) + doubt(row, than);
}

bool is_best(const ComparedNumber &row, std::size_t plan) {
  if (row.number.better == Better::neither || !row.of[plan])
    return false;
  bool has_rival = false;
  for (std::size_t other = 0; other < row.of.size(); ++other) {
    if (other == plan || !row.of[other])
      continue;
    has_rival = true;
    if (!is_better(row, plan, other))
      return false;
  }
  return has_rival;
}

} // namespace

Choice choose(const Comparison &comparison) {
  const auto &plans = comparison.plans;
  std::vector<std::size_t> fit;
  std::optional<std::size_t> least;
  for (std::size_t i = 0; i < plans.size(); ++i) {
    if (plans[i].is_fit())
      fit.push_back(i);
    if (plans[i].dangers > 0)
      continue;
    if (!least || plans[i].missed < plans[*least].missed ||
        (plans[i].missed == plans[*least].missed && is_quicker(plans[i], plans[*least])))
      least = i;
  }
  if (!fit.empty())
    return choose_fit(comparison, std::move(fit));
  if (least)
    return {.reason = ChoiceReason::least_missed, .plan = least, .also_fit = {}};
  return {};
}

std::vector<std::vector<std::size_t>> best_at(const Comparison &comparison) {
  std::vector<std::vector<std::size_t>> best(comparison.plans.size());
  for (std::size_t row = 0; row < comparison.numbers.size(); ++row)
    for (std::size_t plan = 0; plan < best.size(); ++plan)
      if (is_best(comparison.numbers[row], plan))
        best[plan].push_back(row);
  return best;
}

} // namespace asperity
