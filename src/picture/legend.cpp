// What the colours and the hatchings mean.
#include "legend.h"

#include "asperity/picture/colour_map.h"
#include "asperity/report/number_text.h"
#include "legend_parts.h"
#include "ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kBarWidth_px = 30;
constexpr int kBarHeight_px = 240;
constexpr int kHistogram_px = 54;

std::string signed_text(double value, const std::string &text) {
  return fmt::format("{}{}", value > 0.0 ? "+" : "", text);
}

void draw_histogram(Page &page, const Box &bar, const ColourRange &range) {
  const double most = *std::max_element(range.histogram.begin(), range.histogram.end());
  if (most <= 0.0)
    return;
  fill(page.image, {bar.x - 7, bar.y, 1, bar.height}, kRule);
  for (int y = 0; y < bar.height; ++y) {
    const double up = (bar.height - 0.5 - y) / bar.height;
    const auto bin = std::min(static_cast<std::size_t>(up * static_cast<double>(kBins)), kBins - 1);
    // Square root: a narrow mark of a thousandth of the surface is still a hair wide.
    const int length = static_cast<int>(std::ceil(std::sqrt(range.histogram[bin] / most) * kHistogram_px));
    if (range.histogram[bin] > 0.0)
      fill(page.image, {bar.x - 6 - length, bar.y + y, length, 1}, kSoftInk);
  }
}

void draw_bar(Page &page, const Box &bar, const ColourRange &range) {
  for (int y = 0; y < bar.height; ++y)
    fill(page.image, {bar.x, bar.y + y, bar.width, 1}, residual_colour(1.0 - 2.0 * (y + 0.5) / bar.height));
  frame(page.image, {bar.x - 1, bar.y - 1, bar.width + 2, bar.height + 2}, kInk);
  if (range.share_above > 0.0)
    draw_pointed_end(page, bar, true, residual_colour(1.0));
  if (range.share_below > 0.0)
    draw_pointed_end(page, bar, false, residual_colour(-1.0));
  const Ticks ticks = ticks_between(-range.half_um, range.half_um, range.half_um / 4.0);
  for (double value : ticks.values) {
    const int y = bar.y + static_cast<int>(std::lround((0.5 - 0.5 * value / range.half_um) * bar.height));
    fill(page.image, {bar.right(), std::clamp(y, bar.y, bar.bottom() - 1), 6, 1}, kInk);
    const std::string text = signed_text(value, tick_text(value, ticks.decimals));
    page.write(text, bar.right() + 11, y + 6, kText_px, kInk);
  }
}

std::string range_words(const ColourRange &range) {
  std::string text =
      fmt::format("Colours span \u00b1{} um", tick_text(range.half_um, range.half_um < 10.0 ? 1 : 0));
  const double most = *std::max_element(range.histogram.begin(), range.histogram.end());
  if (most <= 0.0)
    return "No pass reaches this surface.";
  const double beyond = range.share_below + range.share_above;
  if (beyond <= 0.0)
    return text + " and hold all of the cut surface; bars: how it spreads.";
  return text + fmt::format("; {}% lies beyond (pointed ends); bars: how the surface spreads.",
                            beyond < 0.001 ? "under 0.1" : fixed_text(100.0 * beyond, 1));
}

} // namespace

int draw_legend(Page &page, const Layout &layout, const Raster &raster, const ColourRange &range) {
  const int x = layout.legend_x, width = layout.legend_width;
  int y = layout.legend_y + 14;
  const std::string about =
      range.about_median ? fmt::format("um off the median, which itself lies {} off the wanted surface",
                                       signed_text(range.centre_um, um_text(range.centre_um)))
                         : "um off the wanted surface";
  y = write_lines(page, about, x, y, width, kInk) + 6;
  page.write(range.about_median ? "more stock left" : "stock left", x, y + 6, kText_px, kSoftInk);
  const Box bar{x + kHistogram_px + 14, y + 14 + kPointedEnd_px, kBarWidth_px, kBarHeight_px};
  draw_histogram(page, bar, range);
  draw_bar(page, bar, range);
  y = bar.bottom() + kPointedEnd_px + 16;
  page.write(range.about_median ? "cut deeper" : "cut too deep", x, y, kText_px, kSoftInk);
  y = write_lines(page, range_words(range), x, y + kLine_px + 6, width, kSoftInk) + 8;
  return draw_uncut_tones(page, raster, x, y, width);
}

} // namespace asperity
