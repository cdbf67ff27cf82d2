// Statistics that a few odd values do not move.
#include "robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace asperity {

namespace {

/// The values between two bounds, both included, to the front; how many there are, and how many lie below.
template <class Number> struct Between {
  std::span<Number> values;
  std::size_t below = 0;
};

/// Without branches, which nobody could foretell.
template <class Number>
Between<Number> gather(std::span<const Number> all, Number low, Number high, std::vector<Number> &room) {
  room.resize(all.size() + 1);
  std::size_t count = 0, below = 0;
  for (const Number value : all) {
    room[count] = value;
    count += value >= low && value <= high ? 1 : 0;
    below += value < low ? 1 : 0;
  }
  return {std::span(room).first(count), below};
}

/// Of a long list only what lies about the middle of a sample, if the list's own middle is among it.
template <class Number>
std::optional<Between<Number>> about_middle(std::span<const Number> all, std::vector<Number> &room) {
  constexpr std::size_t kSample = 128, kToEitherSide = 12;
  if (all.size() < 8 * kSample)
    return std::nullopt;
  std::array<Number, kSample> sample;
  for (std::size_t i = 0; i < kSample; ++i)
    sample[i] = all[i * all.size() / kSample];
  std::sort(sample.begin(), sample.end());
  const Between<Number> some =
      gather(all, sample[kSample / 2 - kToEitherSide], sample[kSample / 2 + kToEitherSide], room);
  const std::size_t middle = all.size() / 2;
  return some.below < middle && middle < some.below + some.values.size() ? std::optional(some) : std::nullopt;
}

template <class Number> double middle_of(std::span<Number> values) {
  if (values.empty())
    return std::numeric_limits<double>::quiet_NaN();
  const bool is_even = values.size() % 2 == 0;
  std::size_t rank = values.size() / 2;
  std::vector<Number> room;
  if (const auto some = about_middle<Number>(values, room)) {
    rank -= some->below;
    values = some->values;
  }
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(rank);
  std::nth_element(values.begin(), middle, values.end());
  const double upper = static_cast<double>(*middle);
  return is_even ? 0.5 * (static_cast<double>(*std::max_element(values.begin(), middle)) + upper) : upper;
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
