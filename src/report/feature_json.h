// One feature's part of the JSON: what is wanted, sizes, residual statistics, profiles.
#pragma once

#include "asperity/predict/outcome.h"

#include <nlohmann/json.hpp>

namespace asperity {

nlohmann::json feature_json(const Outcome &outcome, std::size_t index);

} // namespace asperity
