// What a feature is asked to be, in words, and what is asked but was never predicted.
#pragma once

#include "asperity/predict/outcome.h"

#include <string>
#include <vector>

namespace asperity {

std::string_view kind_text(const Feature &feature);
std::string_view weight_text(Weight weight);
std::string_view verdict_text(Verdict verdict);

/// A wish of the job that no check answers.
struct Unanswered {
  std::string feature;
  std::string what;
  std::string wanted;
};

/// Roughness, lip and witness depth that the job asks for and the outcome does not check.
std::vector<Unanswered> unanswered_wishes(const Outcome &outcome);

std::size_t missed_checks(const Outcome &outcome);
std::size_t count_of(const Outcome &outcome, Weight weight);

} // namespace asperity
