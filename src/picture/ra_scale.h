// Which Ra the colours of a map span, how the surface spreads over it, and the bar that says so.
#pragma once

#include "legend_parts.h"

#include <array>
#include <optional>
#include <vector>

namespace asperity {

struct RaScale {
  static constexpr std::size_t kBins = 40;
  double upper_um = 1;     ///< Ra in the darkest colour; the lightest is 0
  double share_above = 0;  ///< of the windows, beyond the upper end
  std::size_t windows = 0; ///< with a value
  std::array<double, kBins> histogram{};

  double place(double ra_um) const { return ra_um / upper_um; }
};

/// upper_um > 0 sets the upper end; 0 chooses it: above all windows except the worst hundredth, where that
/// stands far above the usual.
RaScale ra_scale(const std::vector<float> &ra_um, double upper_um);

/// Heading, bar with numbers, how the surface spreads, and the wanted Ra where there is one; returns the y
/// below.
int draw_ra_bar(Page &page, const RaScale &scale, std::optional<double> wanted_um, int x, int y, int width);

} // namespace asperity
