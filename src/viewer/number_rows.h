// Sizes, roughness and times of one or two jobs, in words.
#pragma once

#include "app_state.h"

namespace asperity {

struct NumberRow {
  std::string what;                 ///< "rim: roundness"
  std::string word;                 ///< trade word that explains it, or empty
  std::array<std::string, 2> value; ///< [seat]
};

/// Roughness with as many decimals as mean something: "0.042 um", "1.35 um".
std::string roughness_text(double um);

std::vector<NumberRow> number_rows(const Outcome *a, const Outcome *b);

} // namespace asperity
