// How many times larger residuals are drawn.
#include "exaggeration.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kShownSlope = 0.9;
constexpr double kFlatSlope = 1e-4; ///< flatter surfaces have no say: 0.1 um over 1 mm
/// More would make mountains of what no finger feels. Laid flat in one piece a wall is drawn so small that
/// narrow marks are half averaged away.
constexpr double kMostInSpace = 15.0, kMostOnStrip = 30.0;
constexpr double kMostInSection = 100.0;
constexpr double kShownWidth_mm = 0.3;
constexpr double kFarthestShare = 0.25; ///< of the part's radius

/// Largest of 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that is not above x >= 1.
double rounded_down(double x) {
  const double power = std::pow(10.0, std::floor(std::log10(x)));
  double best = power;
  for (double step : {1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0})
    if (step * power <= x * (1.0 + 1e-9))
      best = step * power;
  return best;
}

double chosen_in_section(const std::vector<float> &sorted_mm) {
  if (sorted_mm.empty())
    return 1.0;
  const double widest = std::max({std::abs(static_cast<double>(sorted_mm.front())),
                                  std::abs(static_cast<double>(sorted_mm.back())), 1e-6});
  return std::clamp(kShownWidth_mm / widest, 1.0, kMostInSection);
}

} // namespace

Exaggeration exaggeration_of(const DrawRequest &request, const SurfacePass &surfaces,
                             const std::vector<std::size_t> &features, double radius_mm) {
  Exaggeration e;
  e.farthest_mm = request.farthest_mm > 0.0 ? request.farthest_mm : std::max(kFarthestShare * radius_mm, 0.1);
  if (request.exaggeration > 0.0) {
    e.times = std::clamp(request.exaggeration, 1.0, kMostExaggeration);
    return e;
  }
  double times = request.view == View::space ? kMostInSpace : kMostOnStrip;
  if (request.view == View::section && !features.empty())
    times = chosen_in_section(surfaces.residual_sample(features.front()));
  else
    for (std::size_t feature : features)
      if (surfaces.steep_slope(feature) > kFlatSlope)
        times = std::min(times, kShownSlope / surfaces.steep_slope(feature));
  e.times = rounded_down(std::max(times, 1.0));
  return e;
}

} // namespace asperity
