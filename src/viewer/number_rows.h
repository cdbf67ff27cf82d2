// The key numbers of one or two jobs in one table, and which is the better.
#pragma once

#include "asperity/number/key_number.h"

#include <array>

namespace asperity {

struct NumberRow {
  std::string feature;              ///< empty: of the whole job
  std::string what;                 ///< "roundness"
  std::array<std::string, 2> value; ///< [seat]; empty = not known there
  int better = -1;                  ///< seat; -1 = neither, or only one
};

/// Roughness with as many decimals as mean something: "0.042 um", "1.35 um".
std::string roughness_text(double um);

/// In the order of A's numbers, then what only B has. Better: by what counts as such for the number, and by
/// more than what its text shows.
std::vector<NumberRow> number_rows(const std::vector<KeyNumber> &a, const std::vector<KeyNumber> &b);

} // namespace asperity
