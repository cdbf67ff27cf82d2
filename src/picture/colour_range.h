// Which residuals the colours span: robust against a few far values, and said in words.
#pragma once

#include "raster.h"

#include <array>
#include <string>

namespace asperity {

inline constexpr std::size_t kBins = 60;

struct ColourRange {
  double centre_um = 0;      ///< shown in the middle colour
  double half_um = 1;        ///< centre +- half are the end colours
  bool about_median = false; ///< centre is the median, because all of the surface lies far to one side
  double share_below = 0, share_above = 0; ///< of the cut surface, beyond the ends
  std::array<double, kBins> histogram{};   ///< share of the cut surface, from the lower end up

  double place(double residual_um) const { return (residual_um - centre_um) / half_um; }
};

/// half_range_um > 0 sets the range; 0 chooses it: ends lie beyond all values except those farther from the
/// median than six times the spread between the quartiles (at least 10 um).
ColourRange colour_range(const Raster &raster, double half_range_um);

/// Smallest of 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that is not below x > 0.
double round_up(double x);

} // namespace asperity
