// Where the parts of the picture stand, and how far the chart is stretched to be readable.
#pragma once

#include "asperity/picture/canvas.h"
#include "plane.h"

#include <string>

namespace asperity {

struct Layout {
  Box colour, relief; ///< the two panels, of equal size
  int legend_x = 0, legend_width = 0;
  int legend_y = 0;
  int list_y = 0;         ///< where the findings may begin at the earliest
  bool is_stacked = true; ///< relief below the colours, else beside
  double stretch = 1.0;   ///< > 1: drawn so many times taller than true
  double widening = 1.0;  ///< > 1: drawn so many times wider than true
};

inline constexpr int kMargin_px = 36;
inline constexpr int kAxisLeft_px = 76;  ///< room for numbers and name of the upright axis
inline constexpr int kAxisBelow_px = 84; ///< room below a panel

Layout layout_for(const Plane &plane, int width_px);
/// One panel as wide as the sheet allows: only `colour` is set, the list begins below it.
Layout single_panel_layout(const Plane &plane, int width_px);

/// "; drawn 3 times taller than true", or nothing.
std::string stretch_words(const Layout &layout);

} // namespace asperity
