// Least-squares circle of a nearly round profile given as deviations over angle.
#pragma once

#include <span>

namespace asperity {

struct CircleFit {
  double mean_mm = 0; ///< mean deviation: radius of the circle minus nominal radius
  double centre_x_mm = 0, centre_y_mm = 0;
  double roundness_mm = 0; ///< largest minus smallest distance from the centre
  std::size_t points = 0;
};

/// Deviations e over angle [rad]; NaN are left out. e = mean + x cos + y sin is the least-squares circle to
/// first order in e over radius (limacon). [ISO 12181-2 least-squares reference circle; from memory]
CircleFit fit_circle(std::span<const double> angle_rad, std::span<const double> deviation_mm);

} // namespace asperity
