// The numbers of one prediction that plans are judged by, each under a stable name.
#pragma once

#include "asperity/predict/outcome.h"

#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// Which of two values is better. nearer_wanted: the one whose distance from `wanted` is smaller; neither:
/// the number informs only.
enum class Better { lower, higher, nearer_wanted, neither };

struct KeyNumber {
  std::string id; ///< "time_s", "rim/lip_mm": stable, unique in one outcome, ends with the unit if it has one
  std::string feature; ///< as named in the job; empty = of the whole job
  std::string what;    ///< in words: "lip at the base"
  std::string unit;    ///< "mm", "um", "s", "N", "W", "degC", "%", or empty
  double value = 0;
  Better better = Better::neither;
  double wanted = 0; ///< for nearer_wanted: nominal size, or 0
};

/// Always in the same order: of the whole job (time, checks and findings, forces, margins, heat), then
/// feature by feature (sizes, flaws, roughness). A number that does not apply (nothing cut, roughness not
/// read, margin not known) is left out; a flaw that is not there is 0, so that tables have no holes. All
/// values are finite.
std::vector<KeyNumber> key_numbers(const Outcome &outcome);

/// The number of that id, or nothing.
const KeyNumber *find_number(const std::vector<KeyNumber> &numbers, std::string_view id);

/// Greater = better: -value, value or -|value - wanted|; 0 for neither.
double merit(const KeyNumber &number);

} // namespace asperity
