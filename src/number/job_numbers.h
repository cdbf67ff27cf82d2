// The two halves of key_numbers.
#pragma once

#include "asperity/number/key_number.h"

namespace asperity {

/// Adds the number unless it is not finite.
void put(std::vector<KeyNumber> &numbers, KeyNumber number);

void put_job_numbers(std::vector<KeyNumber> &numbers, const Outcome &outcome);
/// `name`: the feature's, made unique.
void put_feature_numbers(std::vector<KeyNumber> &numbers, const Outcome &outcome, std::size_t feature,
                         const std::string &name);

} // namespace asperity
