// Drawing on a picture. Edges are smoothed by the distance from the pixel's middle to the shape.
#include "asperity/picture/canvas.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Cover of a pixel whose middle lies `inside_px` inside the shape's edge.
double edge_cover(double inside_px) { return std::clamp(inside_px + 0.5, 0.0, 1.0); }

std::uint8_t mixed(std::uint8_t under, std::uint8_t over, double share) {
  return static_cast<std::uint8_t>(std::lround(under + (over - under) * share));
}

} // namespace

void cover(Image &image, int x, int y, Rgb colour, double share) {
  if (!image.holds(x, y) || share <= 0.0)
    return;
  Rgb &pixel = image.at(x, y);
  const double s = std::min(share, 1.0);
  pixel = {mixed(pixel.r, colour.r, s), mixed(pixel.g, colour.g, s), mixed(pixel.b, colour.b, s)};
}

void fill(Image &image, const Box &box, Rgb colour) {
  for (int y = std::max(box.y, 0); y < std::min(box.bottom(), image.height); ++y)
    for (int x = std::max(box.x, 0); x < std::min(box.right(), image.width); ++x)
      image.at(x, y) = colour;
}

void frame(Image &image, const Box &box, Rgb colour) {
  fill(image, {box.x, box.y, box.width, 1}, colour);
  fill(image, {box.x, box.bottom() - 1, box.width, 1}, colour);
  fill(image, {box.x, box.y, 1, box.height}, colour);
  fill(image, {box.right() - 1, box.y, 1, box.height}, colour);
}

void fill_rounded(Image &image, const Box &box, double radius_px, Rgb colour) {
  const double half_w = 0.5 * box.width, half_h = 0.5 * box.height;
  const double radius = std::min({radius_px, half_w, half_h});
  for (int y = box.y; y < box.bottom(); ++y)
    for (int x = box.x; x < box.right(); ++x) {
      const double dx = std::max(std::abs(x + 0.5 - box.x - half_w) - (half_w - radius), 0.0);
      const double dy = std::max(std::abs(y + 0.5 - box.y - half_h) - (half_h - radius), 0.0);
      cover(image, x, y, colour, edge_cover(radius - std::hypot(dx, dy)));
    }
}

void line(Image &image, double x0, double y0, double x1, double y1, double width_px, Rgb colour) {
  const double reach = 0.5 * width_px + 1.0;
  const double dx = x1 - x0, dy = y1 - y0, squared = dx * dx + dy * dy;
  const int left = static_cast<int>(std::floor(std::min(x0, x1) - reach));
  const int right = static_cast<int>(std::ceil(std::max(x0, x1) + reach));
  const int top = static_cast<int>(std::floor(std::min(y0, y1) - reach));
  const int bottom = static_cast<int>(std::ceil(std::max(y0, y1) + reach));
  for (int y = top; y <= bottom; ++y)
    for (int x = left; x <= right; ++x) {
      const double px = x + 0.5 - x0, py = y + 0.5 - y0;
      const double t = squared > 0.0 ? std::clamp((px * dx + py * dy) / squared, 0.0, 1.0) : 0.0;
      cover(image, x, y, colour, edge_cover(0.5 * width_px - std::hypot(px - t * dx, py - t * dy)));
    }
}

void ring(Image &image, double cx, double cy, double radius_px, double width_px, Rgb colour) {
  const double reach = radius_px + 0.5 * width_px + 1.0;
  for (int y = static_cast<int>(std::floor(cy - reach)); y <= static_cast<int>(std::ceil(cy + reach)); ++y)
    for (int x = static_cast<int>(std::floor(cx - reach)); x <= static_cast<int>(std::ceil(cx + reach));
         ++x) {
      const double off = std::abs(std::hypot(x + 0.5 - cx, y + 0.5 - cy) - radius_px);
      cover(image, x, y, colour, edge_cover(0.5 * width_px - off));
    }
}

} // namespace asperity
