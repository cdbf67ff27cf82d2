// One prediction as JSON for other programs; the keys are described in README.md.
#pragma once

#include "asperity/predict/outcome.h"

#include <nlohmann/json.hpp>

#include <string>

namespace asperity {

inline constexpr int kJsonVersion = 1; ///< raised when a key changes its meaning or goes away

/// Units are part of the key names; numbers that are not finite become null.
nlohmann::json outcome_json(const Outcome &outcome);

/// The same as indented UTF-8 text; bytes that are not UTF-8 are replaced, never thrown at.
std::string outcome_json_text(const Outcome &outcome);

} // namespace asperity
