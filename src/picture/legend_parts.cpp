// What the legends of all pictures share.
#include "legend_parts.h"

#include "panel.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

int draw_tone(Page &page, int x, int y, int width, Surface surface, std::string_view words) {
  constexpr Box kSwatch{0, 0, 38, 24};
  for (int dy = 0; dy < kSwatch.height; ++dy)
    for (int dx = 0; dx < kSwatch.width; ++dx)
      cover(page.image, x + dx, y + dy, surface_tone(surface, dx, dy), 1.0);
  frame(page.image, {x - 1, y - 1, kSwatch.width + 2, kSwatch.height + 2}, kInk);
  return write_lines(page, words, x + kSwatch.width + 10, y + 18, width - kSwatch.width - 10, kInk) - 6;
}

} // namespace

int write_lines(Page &page, std::string_view text, int x, int y, int width, Rgb colour) {
  for (const std::string &text_line : fitted_lines(page.lettering, text, kText_px, width)) {
    page.write(text_line, x, y, kText_px, colour);
    y += kLine_px - 3;
  }
  return y;
}

void draw_pointed_end(Page &page, const Box &bar, bool is_top, Rgb colour) {
  for (int k = 0; k < kPointedEnd_px; ++k) {
    const double half = 0.5 * bar.width * (1.0 - (k + 0.5) / kPointedEnd_px);
    const int y = is_top ? bar.y - 1 - k : bar.bottom() + k;
    const int left = static_cast<int>(std::lround(bar.x + 0.5 * bar.width - half));
    fill(page.image, {left, y, std::max(1, static_cast<int>(std::lround(2.0 * half))), 1}, colour);
  }
}

int draw_uncut_tones(Page &page, const Raster &raster, int x, int y, int width) {
  if (raster.has(Surface::lip))
    y = draw_tone(page, x, y, width, Surface::lip, "not cut: lip left standing at the base") + 6;
  if (raster.has(Surface::standing))
    y = draw_tone(page, x, y, width, Surface::standing, "not cut: stock left standing") + 6;
  if (raster.has(Surface::skin))
    y = draw_tone(page, x, y, width, Surface::skin, "not cut: blank too small here, its skin stays") + 6;
  return y;
}

} // namespace asperity
