// Sums of powers of heights, shared by profile and areal parameters.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace asperity {

struct Moments {
  double absolute = 0, second = 0, third = 0, fourth = 0; ///< sums
  double highest = -HUGE_VAL, lowest = HUGE_VAL;
  std::size_t count = 0;

  void add(double z) {
    const double square = z * z;
    absolute += std::abs(z);
    second += square;
    third += square * z;
    fourth += square * square;
    highest = std::max(highest, z);
    lowest = std::min(lowest, z);
    ++count;
  }
  void add(const Moments &other) {
    absolute += other.absolute;
    second += other.second;
    third += other.third;
    fourth += other.fourth;
    highest = std::max(highest, other.highest);
    lowest = std::min(lowest, other.lowest);
    count += other.count;
  }
  double mean_absolute() const { return absolute / static_cast<double>(count); }
  double root_mean_square() const { return std::sqrt(second / static_cast<double>(count)); }
  /// Third and fourth moment in units of the root mean square; 0 for a flat profile, where they say nothing.
  double skewness() const {
    const double rms = root_mean_square();
    return rms > 0 ? third / static_cast<double>(count) / (rms * rms * rms) : 0.0;
  }
  double kurtosis() const {
    const double rms = root_mean_square();
    return rms > 0 ? fourth / static_cast<double>(count) / (rms * rms * rms * rms) : 0.0;
  }
};

} // namespace asperity
