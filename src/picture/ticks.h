// Where an axis is marked: round numbers, not closer than a reader can tell apart.
#pragma once

#include <string>
#include <vector>

namespace asperity {

struct Ticks {
  std::vector<double> values;
  int decimals = 0; ///< that tell neighbours apart
};

/// Multiples of 1, 2 or 5 times a power of ten within [low, high], at least `least_step` apart.
Ticks ticks_between(double low, double high, double least_step);

std::string tick_text(double value, int decimals);

} // namespace asperity
