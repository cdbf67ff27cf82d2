// Drawing on a picture: filled boxes, smooth lines and rings, hatching.
#pragma once

#include "asperity/picture/image.h"

namespace asperity {

/// x, y of the upper left corner, in whole pixels.
struct Box {
  int x = 0, y = 0, width = 0, height = 0;
  int right() const { return x + width; }
  int bottom() const { return y + height; }
};

/// Lays `colour` over the pixel with the given cover, 0..1; outside the picture nothing happens.
void cover(Image &image, int x, int y, Rgb colour, double share);
void fill(Image &image, const Box &box, Rgb colour);
/// One pixel wide, just inside the box.
void frame(Image &image, const Box &box, Rgb colour);
/// Box with corners rounded by radius_px, edges smooth.
void fill_rounded(Image &image, const Box &box, double radius_px, Rgb colour);
/// Smooth line between points in pixel coordinates (0.5 = middle of the first pixel).
void line(Image &image, double x0, double y0, double x1, double y1, double width_px, Rgb colour);
/// Smooth ring of the given middle radius.
void ring(Image &image, double x, double y, double radius_px, double width_px, Rgb colour);

} // namespace asperity
