// Bands in words, as a table of commas, and as JSON.
#pragma once

#include "asperity/tolerance/tolerance.h"

#include <string>

namespace asperity {

/// What was asked for, as far as the words need it.
struct ToleranceShown {
  const Job &job;
  const ToleranceOptions &options;
  const Tolerance &tolerance;
};

std::string tolerance_text(const ToleranceShown &shown);
/// One line a number: id, feature, what, unit, stated, mean, standard deviation, low, high, draws, then one
/// share for every input.
std::string tolerance_csv(const ToleranceShown &shown);
std::string tolerance_json(const ToleranceShown &shown);

/// "+-0.05 mm" or "1/1.5 to 1.5 times", as stated.
std::string uncertainty_text(const UncertainInput &input);

} // namespace asperity
