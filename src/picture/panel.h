// One panel: the chart's pixels, its frame and its axes.
#pragma once

#include "asperity/job/feature.h"
#include "colour_range.h"
#include "page.h"
#include "plane.h"
#include "relief.h"

namespace asperity {

/// Flat tone with its own hatching for what is not cut; its pattern runs through the whole panel.
Rgb surface_tone(Surface surface, int x, int y);

void paint_colours(Page &page, const Box &panel, const Raster &raster, const ColourRange &range);
void paint_relief(Page &page, const Box &panel, const Raster &raster, const Relief &relief);

/// Frame, ticks, numbers and names: s and z of a wall (with degrees round a circle), x and y of a floor.
void draw_axes(Page &page, const Box &panel, const Plane &plane, const Feature &feature);

} // namespace asperity
