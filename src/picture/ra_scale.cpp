// Which Ra the colours of a map span.
#include "ra_scale.h"

#include "asperity/picture/colour_map.h"
#include "asperity/report/number_text.h"
#include "colour_range.h"
#include "ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kBarWidth_px = 30, kBarHeight_px = 240, kHistogram_px = 54;

std::vector<double> known(const std::vector<float> &ra_um) {
  std::vector<double> values;
  for (float value : ra_um)
    if (std::isfinite(value))
      values.push_back(static_cast<double>(value));
  std::sort(values.begin(), values.end());
  return values;
}

double chosen_upper_um(const std::vector<double> &sorted) {
  constexpr double kFar = 3.0, kWorstShare = 0.01, kLeast_um = 0.01;
  const auto at = [&](double share) {
    return sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))];
  };
  const double most = std::min(sorted.back(), std::max(at(1.0 - kWorstShare), kFar * at(0.5)));
  return round_up(std::max(most, kLeast_um));
}

std::string words_of(const RaScale &scale) {
  if (scale.windows == 0)
    return "Nothing of this surface is cut.";
  if (scale.share_above <= 0.0)
    return "Bars: how the surface spreads.";
  return fmt::format("{}% lies beyond (pointed end). Bars: how the surface spreads.",
                     scale.share_above < 0.001 ? "Under 0.1" : fixed_text(100.0 * scale.share_above, 1));
}

void draw_spread(Page &page, const Box &bar, const RaScale &scale) {
  const double most = *std::max_element(scale.histogram.begin(), scale.histogram.end());
  if (most <= 0.0)
    return;
  fill(page.image, {bar.x - 7, bar.y, 1, bar.height}, kRule);
  for (int y = 0; y < bar.height; ++y) {
    const double up = (bar.height - 0.5 - y) / bar.height;
    const double share = scale.histogram[static_cast<std::size_t>(up * static_cast<double>(RaScale::kBins))];
    // Square root: a thousandth of the surface is still a hair wide.
    const int length = static_cast<int>(std::ceil(std::sqrt(share / most) * kHistogram_px));
    if (share > 0.0)
      fill(page.image, {bar.x - 6 - length, bar.y + y, length, 1}, kSoftInk);
  }
}

} // namespace

RaScale ra_scale(const std::vector<float> &ra_um, double upper_um) {
  const std::vector<double> values = known(ra_um);
  RaScale scale;
  scale.windows = values.size();
  if (upper_um > 0.0)
    scale.upper_um = upper_um;
  else if (!values.empty())
    scale.upper_um = chosen_upper_um(values);
  const double each = values.empty() ? 0.0 : 1.0 / static_cast<double>(values.size());
  for (double value : values) {
    scale.share_above += value > scale.upper_um ? each : 0.0;
    const double bin = std::clamp(scale.place(value), 0.0, 1.0) * static_cast<double>(RaScale::kBins);
    scale.histogram[std::min(static_cast<std::size_t>(bin), RaScale::kBins - 1)] += each;
  }
  return scale;
}

int draw_ra_bar(Page &page, const RaScale &scale, std::optional<double> wanted_um, int x, int y, int width) {
  y = write_lines(page, "local Ra in um, from the teeth and the path alone", x, y + 14, width, kInk) + 4;
  const Box bar{x + kHistogram_px + 14, y + kPointedEnd_px, kBarWidth_px, kBarHeight_px};
  draw_spread(page, bar, scale);
  for (int row = 0; row < bar.height; ++row)
    fill(page.image, {bar.x, bar.y + row, bar.width, 1}, roughness_colour(1.0 - (row + 0.5) / bar.height));
  frame(page.image, {bar.x - 1, bar.y - 1, bar.width + 2, bar.height + 2}, kInk);
  if (scale.share_above > 0.0)
    draw_pointed_end(page, bar, true, roughness_colour(1.0));
  const auto y_of = [&](double ra_um) {
    return std::clamp(bar.bottom() - static_cast<int>(std::lround(scale.place(ra_um) * bar.height)), bar.y,
                      bar.bottom() - 1);
  };
  const Ticks ticks = ticks_between(0.0, scale.upper_um, scale.upper_um / 6.0);
  for (double value : ticks.values) {
    fill(page.image, {bar.right(), y_of(value), 6, 1}, kInk);
    page.write(tick_text(value, ticks.decimals), bar.right() + 11, y_of(value) + 6, kText_px, kInk);
  }
  if (wanted_um && *wanted_um <= scale.upper_um) {
    fill(page.image, {bar.x - 6, y_of(*wanted_um) - 1, bar.width + 12, 3}, kInk);
    page.write("wanted", bar.right() + 62, y_of(*wanted_um) + 6, kText_px, kInk);
  }
  return write_lines(page, words_of(scale), x, bar.bottom() + kPointedEnd_px + 14, width, kSoftInk) + 8;
}

} // namespace asperity
