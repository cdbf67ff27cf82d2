// What the legends of all pictures share: lines of words, pointed ends of a bar, tones of what is not cut.
#pragma once

#include "page.h"
#include "raster.h"

#include <string_view>

namespace asperity {

inline constexpr int kPointedEnd_px = 16;

/// Fitted lines from y on; returns the y of the line that would follow.
int write_lines(Page &page, std::string_view text, int x, int y, int width, Rgb colour);

/// A pointed end of an upright bar says that some of the surface lies beyond.
void draw_pointed_end(Page &page, const Box &bar, bool is_top, Rgb colour);

/// One swatch with words for each kind of uncut surface in the raster; returns the y below them.
int draw_uncut_tones(Page &page, const Raster &raster, int x, int y, int width);

} // namespace asperity
