// Least-squares circle of a nearly round profile given as deviations by direction.
#pragma once

#include "asperity/base/vec.h"

#include <span>

namespace asperity {

struct CircleFit {
  double mean_mm = 0; ///< mean deviation: radius of the circle minus nominal radius
  double centre_x_mm = 0, centre_y_mm = 0;
  double roundness_mm = 0; ///< largest minus smallest distance from the centre
  std::size_t points = 0;
};

/// Deviations e in directions from the centre [unit]; NaN are left out. e = mean + x cos + y sin is the
/// least-squares circle to first order in e over radius (limacon). [ISO 12181-2 least-squares reference
/// circle; from memory]
CircleFit fit_circle(std::span<const Vec2> direction, std::span<const double> deviation_mm);

} // namespace asperity
