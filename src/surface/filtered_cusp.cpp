// What the Gaussian filter leaves of parabolic cusps.
#include "asperity/surface/kinematic.h"

#include "asperity/base/units.h"
#include "asperity/surface/gaussian_filter.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace asperity {

namespace {

/// Mean-line amplitudes of cos(k pi u): (4 / pi^2) (-1)^k / k^2 times what the filter lets pass, until
/// nothing.
std::vector<double> mean_line_terms(double pitch_over_cutoff) {
  constexpr double kNothing = 1e-12;
  std::vector<double> terms;
  for (int k = 1;; ++k) {
    const double share = gaussian_transmission(pitch_over_cutoff / k, 1.0);
    if (share < kNothing)
      return terms;
    terms.push_back((k % 2 ? -4.0 : 4.0) / (kPi * kPi * k * k) * share);
  }
}

/// Sum of terms[k - 1] cos(k angle), by the recurrence of cosines (Clenshaw).
double cosine_sum(const std::vector<double> &terms, double angle) {
  const double twice = 2.0 * std::cos(angle);
  double next = 0, after = 0;
  for (std::size_t k = terms.size(); k > 0; --k) {
    const double now = terms[k - 1] + twice * next - after;
    after = next;
    next = now;
  }
  return next * twice / 2.0 - after;
}

} // namespace

FilteredCusp filtered_cusp(double pitch_over_cutoff) {
  // Far beyond the cutoff everything is waviness; the longest pitch summed keeps the series short.
  constexpr double kLongest = 64;
  const std::vector<double> terms = mean_line_terms(std::clamp(pitch_over_cutoff, 1e-3, kLongest));
  const auto height = [&](double u) { return u * u - 1.0 / 3.0 - cosine_sum(terms, kPi * u); };

  constexpr int kSamples = 4000; // of half a cusp; midpoint rule, error below 1e-6
  double absolute = 0, second = 0, third = 0;
  const double highest = height(1.0);
  double lowest = height(0.0);
  for (int i = 0; i < kSamples; ++i) {
    const double z = height((i + 0.5) / kSamples);
    absolute += std::abs(z);
    second += z * z;
    third += z * z * z;
    lowest = std::min(lowest, z);
  }
  const double rq = std::sqrt(second / kSamples);
  return {absolute / kSamples, rq, highest - lowest, third / kSamples / (rq * rq * rq)};
}

} // namespace asperity
