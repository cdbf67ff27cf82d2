// Statistics that a few odd values do not move.
#pragma once

#include <span>
#include <vector>

namespace asperity {

/// Middle value (mean of the two middle ones); NaN of nothing. Rearranges `values`.
double median_of(std::span<double> values);
double median_of(std::span<float> values);

/// Standard deviation a normal law would have with this median distance from the median: 1.4826 MAD.
/// [Rousseeuw & Croux 1993]
double robust_deviation(std::vector<double> values);

struct StraightLine {
  double at_zero = 0, slope = 0;
  double at(double x) const { return at_zero + slope * x; }
};

/// Repeated-median line: half the points may be anything. [Siegel 1982]
StraightLine repeated_median_line(std::span<const double> x, std::span<const double> y);

} // namespace asperity
