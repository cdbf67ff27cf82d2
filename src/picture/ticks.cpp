// Where an axis is marked.
#include "ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

Ticks ticks_between(double low, double high, double least_step) {
  Ticks ticks;
  if (!(high > low) || !(least_step > 0.0))
    return ticks;
  const double power = std::pow(10.0, std::floor(std::log10(least_step)));
  double step = 10.0 * power;
  for (double s : {5.0, 2.0, 1.0})
    if (s * power >= least_step)
      step = s * power;
  ticks.decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  const double slack = 1e-9 * step;
  for (double k = std::ceil((low - slack) / step); k * step <= high + slack; k += 1.0)
    ticks.values.push_back(k * step);
  return ticks;
}

std::string tick_text(double value, int decimals) {
  const std::string text = fmt::format("{:.{}f}", value, decimals);
  return text.find_first_not_of("-0.") == std::string::npos && text.front() == '-' ? text.substr(1) : text;
}

} // namespace asperity
