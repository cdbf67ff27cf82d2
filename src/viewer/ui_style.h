// The look of the window: colours on light and dark ground, lettering.
#pragma once

#include "asperity/picture/image.h"

#include <imgui.h>

namespace asperity {

/// Colours of the panels. What is met or missed is always said in words too.
struct Inks {
  ImU32 ink = 0, soft = 0, rule = 0, panel = 0;
  ImU32 met = 0, missed = 0, danger = 0, changed = 0;
  ImU32 a = 0, b = 0; ///< the two jobs
};

struct Fonts {
  ImFont *body = nullptr, *strong = nullptr, *mono = nullptr;
  bool has_lettering = true; ///< false: DejaVu was not found, a built-in font stands in
};

Inks inks_of(bool is_dark);
void set_style(bool is_dark, double scale);
/// Fills the current context's atlas anew.
Fonts load_fonts(double scale);

ImU32 colour_of(Rgb colour, double cover = 1.0);

} // namespace asperity
