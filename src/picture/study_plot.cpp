// Axes for pictures of studies.
#include "study_plot.h"

#include "ticks.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kTick_px = 7;
constexpr int kTickGap_px = 110;
constexpr int kTickRise_px = 46;
constexpr Rgb kGrid{234, 232, 226};

} // namespace

NumberRange range_of(const std::vector<double> &values) {
  double low = INFINITY, high = -INFINITY;
  for (const double value : values)
    if (std::isfinite(value)) {
      low = std::min(low, value);
      high = std::max(high, value);
    }
  if (!(high >= low))
    return {0.0, 1.0};
  constexpr double kRoom = 0.08;
  const double alike = std::max(1e-9, 0.05 * std::max(std::abs(low), std::abs(high)));
  const double room = high > low ? kRoom * (high - low) : alike;
  return {low - room, high + room};
}

void draw_upright_axis(Page &page, const StudyPlot &plot, bool has_numbers) {
  const Box &box = plot.box;
  fill(page.image, box, kPlotPaper);
  const double per_px = (plot.y.high - plot.y.low) / box.height;
  const Ticks up = ticks_between(plot.y.low, plot.y.high, kTickRise_px * per_px);
  for (const double value : up.values) {
    const int y = std::clamp(static_cast<int>(std::lround(plot.y_px(value))), box.y, box.bottom() - 1);
    fill(page.image, {box.x, y, box.width, 1}, kGrid);
    if (!has_numbers)
      continue;
    fill(page.image, {box.x - kTick_px, y, kTick_px, 1}, kInk);
    page.write(tick_text(value, up.decimals), box.x - kTick_px - 4, y + 6, kText_px, kInk, Anchor::right);
  }
  frame(page.image, {box.x - 1, box.y - 1, box.width + 2, box.height + 2}, kSoftInk);
}

void draw_numbers_along(Page &page, const StudyPlot &plot) {
  const Box &box = plot.box;
  const double per_px = (plot.x.high - plot.x.low) / box.width;
  const Ticks along = ticks_between(plot.x.low, plot.x.high, kTickGap_px * per_px);
  for (const double value : along.values) {
    const int x = std::clamp(static_cast<int>(std::lround(plot.x_px(value))), box.x, box.right() - 1);
    fill(page.image, {x, box.y, 1, box.height}, kGrid);
    fill(page.image, {x, box.bottom(), 1, kTick_px}, kInk);
    page.write(tick_text(value, along.decimals), x, box.bottom() + kTick_px + 17, kText_px, kInk,
               Anchor::centre);
  }
  frame(page.image, {box.x - 1, box.y - 1, box.width + 2, box.height + 2}, kSoftInk);
}

void draw_words_along(Page &page, const StudyPlot &plot, const std::vector<std::string> &words) {
  const Box &box = plot.box;
  const int room = box.width / std::max(1, static_cast<int>(words.size()));
  int last_right = box.x - kTickGap_px;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const int x = static_cast<int>(std::lround(plot.x_px(static_cast<double>(i))));
    fill(page.image, {x, box.bottom(), 1, kTick_px}, kInk);
    std::string word = words[i];
    const int most = std::max(room, 60);
    while (word.size() > 3 && page.lettering.width_px(word, kText_px) > most)
      word = word.substr(0, word.size() - 3) + "..", word.erase(word.size() - 1);
    const int half = page.lettering.width_px(word, kText_px) / 2;
    if (x - half < last_right + 8) // numbers that would touch are left out
      continue;
    last_right = x + half;
    page.write(word, x, box.bottom() + kTick_px + 17, kText_px, kInk, Anchor::centre);
  }
}

void dot(Image &image, double x, double y, double radius_px, Rgb colour) {
  const auto reach = static_cast<int>(std::ceil(radius_px)) + 1;
  const auto cx = static_cast<int>(std::floor(x)), cy = static_cast<int>(std::floor(y));
  for (int j = cy - reach; j <= cy + reach; ++j)
    for (int i = cx - reach; i <= cx + reach; ++i)
      cover(image, i, j, colour,
            std::clamp(radius_px + 0.5 - std::hypot(i + 0.5 - x, j + 0.5 - y), 0.0, 1.0));
}

void dashed_line(Image &image, double x0, double y0, double x1, double y1, Rgb colour) {
  constexpr double kDash_px = 8.0;
  const double length = std::hypot(x1 - x0, y1 - y0);
  for (double at = 0.0; at < length; at += 2.0 * kDash_px) {
    const double a = at / length, b = std::min(1.0, (at + kDash_px) / length);
    line(image, x0 + a * (x1 - x0), y0 + a * (y1 - y0), x0 + b * (x1 - x0), y0 + b * (y1 - y0), 1.5, colour);
  }
}

} // namespace asperity
