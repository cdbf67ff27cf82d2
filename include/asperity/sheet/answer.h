// The choice between plans in plain words: what to take and why, and what each plan is best at.
#pragma once

#include "asperity/compare/choice.h"

#include <span>
#include <string>
#include <vector>

namespace asperity {

struct Answer {
  Choice choice;
  std::string headline;             ///< "Take plan B. It alone meets everything wanted."
  std::vector<std::string> reasons; ///< whole sentences, weightiest first
};

/// Outcomes are those that were compared. One plan alone is judged, not chosen.
Answer answer_of(const Comparison &comparison, std::span<const Outcome *const> outcomes);

/// One closing sentence: "Plan A is best at time on the machine; plan B at ...". Says so when nothing tells
/// the plans apart, and when the uncertainty was not asked for.
std::string best_at_sentence(const Comparison &comparison);

/// "+0.100 mm", "-12 s", "0.0 um": a difference as people read it.
std::string signed_text(double value, std::string_view unit);

/// "better", "worse", "same", or empty for a number that only informs.
std::string_view standing_text(Standing standing);

/// What the standings rest on: the uncertainty, or that it was not asked for.
std::string uncertainty_sentence(const Comparison &comparison);

/// What the plans' titles have in common ("Line sheave"), else the first plan's title.
std::string common_title(std::span<const Outcome *const> outcomes);

} // namespace asperity
