// What the colours and the hatchings mean, with the range in micrometres and how the surface spreads over it.
#pragma once

#include "colour_range.h"
#include "layout.h"
#include "page.h"

namespace asperity {

/// Draws the legend and returns the y below it.
int draw_legend(Page &page, const Layout &layout, const Raster &raster, const ColourRange &range);

} // namespace asperity
