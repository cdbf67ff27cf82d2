// What was wanted against what is predicted, and what the prediction rests on.
#pragma once

#include "asperity/predict/outcome.h"

namespace asperity {

std::vector<WantedCheck> wanted_checks(const Outcome &outcome);
std::vector<std::string> honest_notes(const Outcome &outcome);

} // namespace asperity
