// What dragging does to an eye, a lamp, a sheet.
#pragma once

#include "asperity/render/draw_request.h"

namespace asperity {

/// Half a turn for 360 pixels; the part follows the pointer.
Camera orbited(const Camera &camera, double right_px, double down_px);
Lamp dragged(Lamp lamp, double right_px, double down_px);
/// One click of the wheel away from the user comes a quarter closer.
double zoom_factor(double wheel);
/// Taller by one click of the wheel.
SheetView stretched(SheetView view, double wheel);

} // namespace asperity
