// What was wanted against what is predicted, and what the prediction rests on.
#pragma once

#include "asperity/predict/outcome.h"

namespace asperity {

/// Without roughness a wanted Ra is left out of the checks, and the notes say so.
std::vector<WantedCheck> wanted_checks(const Outcome &outcome, bool with_roughness);
std::vector<std::string> honest_notes(const Outcome &outcome, bool with_roughness);

} // namespace asperity
