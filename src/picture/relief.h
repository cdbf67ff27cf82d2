// The cut surface as a raking lamp shows it: slopes exaggerated until the sharpest marks stand out.
#pragma once

#include "colour_range.h"
#include "raster.h"

#include <vector>

namespace asperity {

struct Relief {
  double exaggeration = 1; ///< slopes are shown this many times steeper
  bool is_even = false;    ///< no slope worth showing
  std::vector<float>
      light; ///< per pixel of the raster: 1 = a flat surface, more = faces the lamp; cut pixels only
};

/// The lamp stands low, mostly along s (or x), a little from above the picture. What lies beyond the colour
/// range (an edge, a gouge) has no say in the exaggeration.
Relief relief_of(const Raster &raster, const ColourRange &range);

} // namespace asperity
