// Grooves and ridges in one row of a wall: deviations from the row's own trend.
#include "groove.h"

#include "moving_median.h"
#include "robust.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Flank ends where the deviation has come back to this share of the depth ...
constexpr double kFlankShare = 0.02;
/// ... or to this [mm], whichever is more.
constexpr double kFlankFloor_mm = 0.05e-3;

/// Walks from the deepest column to where the flank meets the trend; columns with fraction, away from the
/// deepest.
double flank_columns(std::span<const float> deviation, std::size_t deepest, bool forward, double sign,
                     double level) {
  const std::size_t n = deviation.size();
  double before = sign * deviation[deepest];
  for (std::size_t k = 1; k < n; ++k) {
    const double here = sign * deviation[forward ? (deepest + k) % n : (deepest + n - k % n) % n];
    if (std::isnan(here))
      return static_cast<double>(k) - 0.5;
    if (here <= level)
      return static_cast<double>(k) - (level - here) / (before - here);
    before = here;
  }
  return 0.5 * static_cast<double>(n);
}

/// Depth at the vertex of the parabola through the deepest column and its neighbours: exact for the circular
/// groove a standing cutter leaves. A sharp ridge is not rounded up that way.
double vertex_depth(std::span<const float> deviation, std::size_t deepest, double sign) {
  const std::size_t n = deviation.size();
  const double left = sign * deviation[(deepest + n - 1) % n], right = sign * deviation[(deepest + 1) % n];
  const double middle = sign * deviation[deepest];
  const double bow = 2.0 * middle - left - right;
  if (sign > 0.0 || std::isnan(bow) || bow <= 0.0)
    return middle;
  return middle + std::min((right - left) * (right - left) / (8.0 * bow), bow / 8.0);
}

Dent dent_of(std::span<const float> deviation, std::size_t first, std::size_t length, bool ridge,
             double spacing_mm) {
  const std::size_t n = deviation.size();
  const double sign = ridge ? 1.0 : -1.0;
  Dent dent;
  dent.ridge = ridge;
  dent.first = first;
  dent.last = first + length - 1;
  dent.deepest = first % n;
  for (std::size_t k = 0; k < length; ++k)
    if (sign * deviation[(first + k) % n] > sign * deviation[dent.deepest])
      dent.deepest = (first + k) % n;
  dent.depth_mm = vertex_depth(deviation, dent.deepest, sign);
  const double level = std::max(kFlankShare * dent.depth_mm, kFlankFloor_mm);
  const double before = flank_columns(deviation, dent.deepest, false, sign, level);
  const double after = flank_columns(deviation, dent.deepest, true, sign, level);
  dent.width_mm = (before + after) * spacing_mm;
  dent.centre =
      std::fmod(static_cast<double>(dent.deepest + n) + 0.5 * (after - before), static_cast<double>(n));
  return dent;
}

} // namespace

std::vector<float> deviation_from_trend(std::span<const float> e, std::size_t half_columns) {
  if (e.empty())
    return {};
  std::vector<float> deviation = moving_median(e, std::min(half_columns, (e.size() - 1) / 2));
  for (std::size_t i = 0; i < e.size(); ++i)
    deviation[i] = e[i] - deviation[i];
  return deviation;
}

double clear_threshold_mm(std::span<const float> deviation, double least_mm) {
  std::vector<double> known;
  for (const float value : deviation)
    if (!std::isnan(value))
      known.push_back(value);
  return std::max(least_mm, kClear * robust_deviation(std::move(known)));
}

std::vector<Dent> dents_in_row(std::span<const float> deviation, double threshold_mm, double spacing_mm) {
  std::vector<Dent> dents;
  const std::size_t n = deviation.size();
  for (const bool ridge : {false, true}) {
    const auto beyond = [&](std::size_t i) {
      return (ridge ? deviation[i] : -deviation[i]) > static_cast<float>(threshold_mm);
    };
    for (std::size_t i = 0; i < n; ++i) {
      if (!beyond(i) || beyond((i + n - 1) % n))
        continue;
      std::size_t length = 1;
      while (beyond((i + length) % n))
        ++length;
      dents.push_back(dent_of(deviation, i, length, ridge, spacing_mm));
    }
  }
  return dents;
}

} // namespace asperity
