// One plot of heights over a length.
#include "profile_plot.h"

#include "asperity/base/units.h"
#include "ticks.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace asperity {

namespace {

constexpr int kTick_px = 7;
constexpr int kTickGap_px = 110;
constexpr int kTickRise_px = 36;
constexpr int kNameGap_px = 20; ///< of the name of the axis along, left of the box
constexpr Rgb kGrid{232, 230, 224};

/// Lowest and highest of a curve within one column of pixels.
struct Reach {
  double low_px = 0, high_px = -1; ///< y, down; empty when high < low
  void take(double y) {
    if (high_px < low_px)
      low_px = high_px = y;
    low_px = std::min(low_px, y);
    high_px = std::max(high_px, y);
  }
};

/// Notes the straight piece from (x0, y0) to (x1, y1) in every column it crosses.
void note_piece(std::vector<Reach> &columns, int left, double x0, double y0, double x1, double y1) {
  const auto last = static_cast<int>(columns.size()) - 1;
  const int first_column = std::max(0, static_cast<int>(std::floor(x0)) - left);
  const int last_column = std::min(last, static_cast<int>(std::floor(x1)) - left);
  for (int c = first_column; c <= last_column; ++c) {
    const double from = std::max(x0, static_cast<double>(left + c)), to = std::min(x1, left + c + 1.0);
    const auto at = [&](double x) { return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y0; };
    columns[static_cast<std::size_t>(c)].take(at(from));
    columns[static_cast<std::size_t>(c)].take(at(std::max(from, to)));
  }
}

/// A column's heights as one upright stroke with soft ends.
void ink_column(Image &image, int x, double top, double bottom, Rgb colour) {
  for (int y = static_cast<int>(std::floor(top)); y <= static_cast<int>(std::floor(bottom)); ++y)
    cover(image, x, y, colour, std::min(bottom, y + 1.0) - std::max(top, static_cast<double>(y)));
}

} // namespace

double Plot::exaggeration() const {
  const double px_per_mm = box.width / (x_high_mm - x_low_mm);
  return box.height / mm_from_um(y_high_um - y_low_um) / px_per_mm;
}

void set_heights(Plot &plot, double low_um, double high_um) {
  constexpr double kRoom = 0.12, kLeast_um = 0.02;
  const double middle = 0.5 * (low_um + high_um);
  const double half = std::max(0.5 * (high_um - low_um), 0.5 * kLeast_um) * (1.0 + 2.0 * kRoom);
  plot.y_low_um = middle - half;
  plot.y_high_um = middle + half;
}

void draw_plot_axes(Page &page, const Plot &plot, std::string_view along) {
  const Box &box = plot.box;
  const double mm_per_px = (plot.x_high_mm - plot.x_low_mm) / box.width;
  const Ticks across = ticks_between(plot.x_low_mm, plot.x_high_mm, kTickGap_px * mm_per_px);
  for (double place : across.values) {
    const int x = std::min(static_cast<int>(std::lround(plot.x_px(place))), box.right() - 1);
    fill(page.image, {x, box.bottom(), 1, kTick_px}, kInk);
    const std::string text = tick_text(place, across.decimals);
    if (x - page.lettering.width_px(text, kText_px) / 2 > box.x - kNameGap_px) // not over the axis's name
      page.write(text, x, box.bottom() + kTick_px + 17, kText_px, kInk, Anchor::centre);
  }
  page.write(std::string(along) + " (mm)", box.x - kNameGap_px - 4, box.bottom() + kTick_px + 17, kText_px,
             kInk, Anchor::right);

  const double um_per_px = (plot.y_high_um - plot.y_low_um) / box.height;
  const Ticks up = ticks_between(plot.y_low_um, plot.y_high_um, kTickRise_px * um_per_px);
  for (double height : up.values) {
    const int y = std::clamp(static_cast<int>(std::lround(plot.y_px(height))), box.y, box.bottom() - 1);
    fill(page.image, {box.x, y, box.width, 1}, height == 0.0 ? kRule : kGrid);
    fill(page.image, {box.x - kTick_px, y, kTick_px, 1}, kInk);
    page.write(tick_text(height, up.decimals), box.x - kTick_px - 4, y + 6, kText_px, kInk, Anchor::right);
  }
  page.lettering.draw_upwards(page.image, "um", box.x - 72, box.y + box.height / 2, kText_px, kInk);
  frame(page.image, {box.x - 1, box.y - 1, box.width + 2, box.height + 2}, kInk);
}

void draw_curve(Page &page, const Plot &plot, const HeightCurve &curve, double width_px, Rgb colour) {
  const Box &box = plot.box;
  if (box.width <= 0 || curve.height_um.size() < 2)
    return;
  const double top = box.y, bottom = box.bottom();
  const auto y_at = [&](std::size_t i) {
    const double y = plot.y_px(curve.height_um[i]);
    return std::isfinite(y) ? std::clamp(y, top, bottom) : bottom;
  };
  const auto x_at = [&](std::size_t i) {
    return plot.x_px(curve.begin_mm + curve.spacing_mm * static_cast<double>(i));
  };

  // Pieces longer than a pixel are drawn as lines, shorter ones gathered by columns.
  constexpr double kSparse_px = 1.5;
  const bool is_sparse = x_at(1) - x_at(0) > kSparse_px;
  std::vector<Reach> columns(static_cast<std::size_t>(box.width));
  for (std::size_t i = 0; i + 1 < curve.height_um.size(); ++i) {
    const double x0 = x_at(i), x1 = x_at(i + 1);
    if (x1 < box.x || x0 > box.right())
      continue;
    if (is_sparse && x0 >= box.x && x1 <= box.right())
      line(page.image, x0, y_at(i), x1, y_at(i + 1), width_px, colour);
    else
      note_piece(columns, box.x, x0, y_at(i), x1, y_at(i + 1));
  }
  for (int c = 0; c < box.width; ++c) {
    const Reach &reach = columns[static_cast<std::size_t>(c)];
    if (reach.high_px >= reach.low_px)
      ink_column(page.image, box.x + c, std::max(top, reach.low_px - 0.5 * width_px),
                 std::min(bottom, reach.high_px + 0.5 * width_px), colour);
  }
}

void draw_cut_line(Page &page, const Plot &plot, double place_mm, Rgb colour) {
  constexpr int kDash_px = 6;
  const int x = static_cast<int>(std::lround(plot.x_px(place_mm)));
  if (x < plot.box.x || x >= plot.box.right())
    return;
  for (int y = plot.box.y; y < plot.box.bottom(); y += 2 * kDash_px)
    fill(page.image, {x, y, 1, std::min(kDash_px, plot.box.bottom() - y)}, colour);
}

} // namespace asperity
