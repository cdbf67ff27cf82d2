// Statistics that a few odd values do not move.
#include "robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace asperity {

namespace {

/// Values among which the one of a wanted rank is.
template <class Number> struct Ranked {
  std::span<Number> values;
  std::size_t rank = 0; ///< in order, from 0
};

/// Those about the same rank of a sample, into `room`; nothing if the wanted one is not among them.
template <class Number>
std::optional<Ranked<Number>> narrowed(Ranked<Number> all, std::vector<Number> &room) {
  constexpr std::size_t kSample = 32, kToEitherSide = 6; // twice the rank's usual error
  const std::size_t size = all.values.size();
  std::array<Number, kSample> sample;
  for (std::size_t i = 0; i < kSample; ++i)
    sample[i] = all.values[i * size / kSample];
  std::sort(sample.begin(), sample.end());
  const std::size_t place = all.rank * kSample / size;
  const Number low = sample[place - std::min(place, kToEitherSide)];
  const Number high = sample[std::min(place + kToEitherSide, kSample - 1)];
  // Without branches, which nobody could foretell.
  room.resize(std::max(room.size(), size + 1));
  std::size_t count = 0, below = 0;
  for (const Number value : all.values) {
    room[count] = value;
    count += value >= low && value <= high ? 1 : 0;
    below += value < low ? 1 : 0;
  }
  if (all.rank <= below || all.rank >= below + count)
    return std::nullopt; // the one before it is asked for too
  return Ranked<Number>{std::span(room).first(count), all.rank - below};
}

template <class Number> double middle_of(std::span<Number> values) {
  constexpr std::size_t kShort = 160;
  if (values.empty())
    return std::numeric_limits<double>::quiet_NaN();
  const bool is_even = values.size() % 2 == 0;
  Ranked<Number> left{values, values.size() / 2};
  std::vector<Number> room, other_room;
  while (left.values.size() > kShort) {
    const auto fewer = narrowed(left, room);
    if (!fewer || fewer->values.size() == left.values.size())
      break;
    left = *fewer;
    std::swap(room, other_room);
  }
  const auto middle = left.values.begin() + static_cast<std::ptrdiff_t>(left.rank);
  std::nth_element(left.values.begin(), middle, left.values.end());
  const double upper = static_cast<double>(*middle);
  return is_even ? 0.5 * (static_cast<double>(*std::max_element(left.values.begin(), middle)) + upper)
                 : upper;
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
