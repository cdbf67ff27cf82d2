// A flat sheet's picture on the screen: which pixel shows which place.
#pragma once

#include "ui.h"

namespace asperity {

struct SheetFrame {
  ImVec2 low, high;
  SheetView sheet;  ///< in shown pixels
  PictureSize size; ///< in shown pixels

  Vec2 place(ImVec2 p) const {
    return sheet.place_mm(static_cast<double>(p.x - low.x), static_cast<double>(p.y - low.y), size);
  }
  ImVec2 pixel(Vec2 place_mm) const {
    const Vec2 p = sheet.pixel(place_mm, size);
    return {low.x + static_cast<float>(p.x), low.y + static_cast<float>(p.y)};
  }
};

/// Takes all the room that is left; buttons of the mouse are caught there.
SheetFrame sheet_frame(const Ui &ui, const char *name, const SheetView &sheet);
/// The picture, clipped to the frame until end_sheet.
void begin_sheet_picture(const SheetFrame &frame, const ShownPicture &picture);
void end_sheet_picture();

/// A length to measure by, in the lower left corner.
void draw_scale_bar(const Ui &ui, const SheetFrame &frame);

/// Wheel: closer; Ctrl + wheel: taller; right or middle drag: moves. Nothing: the view stays.
std::optional<SheetView> moved_by_mouse(const SheetFrame &frame);

} // namespace asperity
