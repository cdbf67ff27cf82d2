// What the renderer is asked to draw, out of the state.
#pragma once

#include "app_state.h"

namespace asperity {

DrawRequest space_request(const AppState &state, int seat, PictureSize size);
DrawRequest strip_request(const AppState &state, int seat, PictureSize size);
DrawRequest section_request(const AppState &state, int seat, PictureSize size);
/// The strip's view of a close-up's own sheet.
DrawRequest closeup_request(const AppState &state, int seat, PictureSize size);

PictureSize shrunk(PictureSize size, double times);
bool is_same(PictureSize a, PictureSize b);
/// Both would draw the same, if the outcome is the same.
bool is_same(const DrawRequest &a, const DrawRequest &b);

/// The same picture so many times smaller.
DrawRequest shrunk(DrawRequest request, double times);

} // namespace asperity
