// The choice in plain words.
#include "asperity/sheet/answer.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::string missed_text(const WantedCheck &check) {
  const std::string found = std::isfinite(check.predicted) ? quantity_text(check.predicted, check.unit)
                                                           : std::string("not known: no pass reaches it");
  return fmt::format("{}, {}: {}, wanted {}", check.feature, check.what, found, check.wanted);
}

std::string missed_list(const Outcome &outcome) {
  std::string text;
  for (const WantedCheck &check : outcome.checks)
    if (!check.met)
      text += (text.empty() ? "" : "; ") + missed_text(check);
  return text;
}

std::string danger_list(const Outcome &outcome) {
  std::string text;
  for (const Finding &finding : outcome.findings)
    if (finding.weight == Weight::danger)
      text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", name_of(finding.kind), finding.where);
  return text;
}

/// Sentences on one plan: what it misses, what is dangerous about it.
void add_shortfalls(std::vector<std::string> &reasons, const Comparison &comparison, const Outcome &outcome,
                    std::size_t plan) {
  const ComparedPlan &judged = comparison.plans[plan];
  const std::string name = comparison.plans.size() == 1 ? "It" : "Plan " + judged.letter;
  if (judged.dangers > 0)
    reasons.push_back(fmt::format("{} must not be run as it is: {}.", name, danger_list(outcome)));
  if (judged.missed > 0)
    reasons.push_back(fmt::format("{} misses {} of {} wanted: {}.", name, judged.missed, judged.checks,
                                  missed_list(outcome)));
}

std::string time_sentence(const Comparison &comparison, std::size_t plan) {
  const ComparedPlan &chosen = comparison.plans[plan];
  std::string text =
      fmt::format("Plan {} takes {} on the machine", chosen.letter, duration_text(chosen.time_s));
  for (std::size_t k = 0; k < comparison.plans.size(); ++k) {
    if (k == plan)
      continue;
    const double longer = chosen.time_s - comparison.plans[k].time_s;
    text += std::abs(longer) <= 2.0 * resolution("s")
                ? fmt::format(", as long as {}", comparison.plans[k].letter)
                : fmt::format(", {} {} than {}", duration_text(std::abs(longer)),
                              longer > 0.0 ? "longer" : "less", comparison.plans[k].letter);
  }
  return text + ".";
}

std::string letters(const Comparison &comparison, std::vector<std::size_t> plans) {
  std::sort(plans.begin(), plans.end());
  std::string text;
  for (std::size_t k = 0; k < plans.size(); ++k)
    text += (k == 0 ? "" : k + 1 == plans.size() ? " and " : ", ") + comparison.plans[plans[k]].letter;
  return text;
}

std::string headline_of_one(const ComparedPlan &plan) {
  if (plan.dangers > 0)
    return "Do not run this plan as it is: a danger was found.";
  if (plan.missed > 0)
    return fmt::format("This plan misses {} of {} wanted.", plan.missed, plan.checks);
  return plan.checks > 0 ? "This plan meets everything wanted."
                         : "Nothing is asked of this plan, and no danger was found.";
}

std::string headline_of(const Comparison &comparison, const Choice &choice) {
  const auto &plans = comparison.plans;
  if (plans.size() == 1)
    return headline_of_one(plans[0]);
  if (!choice.plan)
    return "Take none of these plans as they are: a danger was found in each.";
  const std::string &letter = plans[*choice.plan].letter;
  const bool is_asked = std::any_of(plans.begin(), plans.end(), [](const auto &p) { return p.checks > 0; });
  std::vector<std::size_t> fit = choice.also_fit;
  fit.push_back(*choice.plan);
  const std::string do_all =
      is_asked ? "meet everything wanted" : "are without danger, and nothing else is asked";
  switch (choice.reason) {
  case ChoiceReason::only_fit:
    return is_asked ? fmt::format("Take plan {}: it alone meets everything wanted.", letter)
                    : fmt::format("Take plan {}: it alone is without danger.", letter);
  case ChoiceReason::quickest_fit:
    return fmt::format("Take plan {}: {} {}, and {} is the quickest.", letter, letters(comparison, fit),
                       do_all, letter);
  case ChoiceReason::equally_quick:
    return fmt::format("Plans {} {}; none is clearly quicker. We would take {}.", letters(comparison, fit),
                       do_all, letter);
  case ChoiceReason::least_missed:
    return fmt::format("No plan meets everything wanted. Plan {} comes nearest: it misses {} of {}.", letter,
                       plans[*choice.plan].missed, plans[*choice.plan].checks);
  case ChoiceReason::none_safe:
    break;
  }
  return {};
}

} // namespace

Answer answer_of(const Comparison &comparison, std::span<const Outcome *const> outcomes) {
  Answer answer{.choice = choose(comparison), .headline = {}, .reasons = {}};
  answer.headline = headline_of(comparison, answer.choice);
  if (answer.choice.plan && comparison.plans.size() > 1)
    answer.reasons.push_back(time_sentence(comparison, *answer.choice.plan));
  for (std::size_t k = 0; k < comparison.plans.size(); ++k)
    add_shortfalls(answer.reasons, comparison, *outcomes[k], k);
  return answer;
}

std::string signed_text(double value, std::string_view unit) {
  const std::string size = quantity_text(std::abs(value), unit);
  if (size.find_first_of("123456789") == std::string::npos)
    return size;
  return (value > 0.0 ? "+" : "-") + size;
}

std::string_view standing_text(Standing standing) {
  switch (standing) {
  case Standing::better:
    return "better";
  case Standing::worse:
    return "worse";
  case Standing::same:
    return "same";
  case Standing::informs:
    break;
  }
  return {};
}

std::string uncertainty_sentence(const Comparison &comparison) {
  return comparison.knows_uncertainty
             ? "\"Better\" and \"worse\" are said only where the difference is larger than the job's stated "
               "uncertainties make it (95 %), or where no uncertainty is known of the number; \"same\" "
               "covers the rest."
             : "The uncertainty of the differences was not asked for (--draws): \"better\" and \"worse\" "
               "follow the "
               "predicted numbers alone, and small differences may mean nothing.";
}

} // namespace asperity
