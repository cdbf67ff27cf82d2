// Statistics that a few odd values do not move.
#include "robust.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

template <class Number> double middle_of(std::span<Number> values) {
  if (values.empty())
    return std::numeric_limits<double>::quiet_NaN();
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  const double upper = static_cast<double>(*middle);
  if (values.size() % 2 == 1)
    return upper;
  const double lower = static_cast<double>(*std::max_element(values.begin(), middle));
  return 0.5 * (lower + upper);
}

} // namespace

double median_of(std::span<double> values) { return middle_of(values); }
double median_of(std::span<float> values) { return middle_of(values); }

double robust_deviation(std::vector<double> values) {
  if (values.empty())
    return 0.0;
  const double middle = median_of(values);
  for (double &value : values)
    value = std::abs(value - middle);
  return 1.4826 * median_of(values);
}

StraightLine repeated_median_line(std::span<const double> x, std::span<const double> y) {
  StraightLine line;
  std::vector<double> slopes, slopes_of_one;
  for (std::size_t i = 0; i < x.size(); ++i) {
    slopes_of_one.clear();
    for (std::size_t j = 0; j < x.size(); ++j)
      if (x[j] != x[i])
        slopes_of_one.push_back((y[j] - y[i]) / (x[j] - x[i]));
    if (!slopes_of_one.empty())
      slopes.push_back(median_of(slopes_of_one));
  }
  line.slope = slopes.empty() ? 0.0 : median_of(slopes);
  std::vector<double> intercepts;
  for (std::size_t i = 0; i < x.size(); ++i)
    intercepts.push_back(y[i] - line.slope * x[i]);
  line.at_zero = intercepts.empty() ? 0.0 : median_of(intercepts);
  return line;
}

} // namespace asperity
