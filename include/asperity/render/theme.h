// The look of everything that is drawn, on light and on dark ground.
#pragma once

#include "asperity/picture/image.h"

#include <array>

namespace asperity {

/// Colours are sRGB. Path kinds and marks differ in lightness and in dash as well, so that no kind of colour
/// vision is needed to tell them apart.
struct Theme {
  Rgb ground, ink, soft_ink, rule;
  Rgb cut_stock;    ///< what a pass has made, lit by the lamp
  Rgb uncut_stock;  ///< lip and other stock left standing
  Rgb printed_skin; ///< the blank is too small there
  Rgb rest;         ///< of the part, where no chart is
  Rgb inside;       ///< back of a surface
  Rgb blank, spoilboard, holding, cutter;
  std::array<Rgb, 4> path; ///< by PathKind
  Rgb chosen;              ///< the piece of path or the finding that is pointed at
  Rgb mark, mark_halo, danger;
};

Theme light_theme();
Theme dark_theme();

} // namespace asperity
