// Which plan to take, by a rule that can be read; and what each plan is best at.
#pragma once

#include "asperity/compare/comparison.h"

namespace asperity {

/// only_fit: one plan alone meets all that is wanted, without danger. quickest_fit: several do, this one is
/// the quickest. equally_quick: several do and none is quicker; fewest flaws, else the first. least_missed:
/// none does, this one misses least (of equals the quickest) without danger. none_safe: a danger was found in
/// every plan.
enum class ChoiceReason { only_fit, quickest_fit, equally_quick, least_missed, none_safe };

struct Choice {
  ChoiceReason reason = ChoiceReason::none_safe;
  std::optional<std::size_t> plan;   ///< nothing with none_safe
  std::vector<std::size_t> also_fit; ///< other plans that would do
};

Choice choose(const Comparison &comparison);

/// For each plan the rows of comparison.numbers in which it is better than every other by more than is the
/// same. Against a plan other than the first the two spreads add up, which asks for more than is needed,
/// never for less.
std::vector<std::vector<std::size_t>> best_at(const Comparison &comparison);

} // namespace asperity
