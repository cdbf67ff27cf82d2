// Words on a drawn picture.
#include "asperity/render/caption.h"

#include "asperity/picture/canvas.h"
#include "asperity/picture/lettering.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Sizes on a sheet 1600 pixels wide.
constexpr double kMargin = 28, kTitle = 28, kText = 16, kLine = 23, kTop = 96, kBottom = 40, kColumn = 330;
constexpr int kScaleRows = 5; ///< numbers beside a scale

struct Sheet {
  Image image;
  const SheetLayout &layout;
  const Theme &theme;
  Lettering lettering;

  int px(double size) const { return static_cast<int>(std::lround(size * layout.scale)); }
  void write(const std::string &text, int x, int y, double size, Rgb colour, Anchor anchor = Anchor::left) {
    lettering.draw(image, text, x, y, px(size), colour, anchor);
  }
  /// Breaks the text into lines that fit; returns the base line after the last.
  int write_block(const std::string &text, int x, int y, int width, Rgb colour);
};

int Sheet::write_block(const std::string &text, int x, int y, int width, Rgb colour) {
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    at = end + 1;
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && lettering.width_px(longer, px(kText)) > width) {
      write(line, x, y, kText, colour);
      y += px(kLine);
      line = word;
    } else {
      line = longer;
    }
  }
  write(line, x, y, kText, colour);
  return y + px(kLine);
}

void place_drawing(Sheet &sheet, const Image &drawing) {
  for (int y = 0; y < drawing.height; ++y)
    for (int x = 0; x < drawing.width; ++x)
      if (sheet.image.holds(sheet.layout.x + x, sheet.layout.y + y))
        sheet.image.at(sheet.layout.x + x, sheet.layout.y + y) = drawing.at(x, y);
}

std::string number_of(double value, double step) {
  const int decimals = std::clamp(static_cast<int>(std::ceil(1.0 - std::log10(std::max(step, 1e-9)))), 0, 6);
  return fmt::format("{:.{}f}", std::abs(value) < 1e-12 ? 0.0 : value, decimals);
}

/// An upright bar with the highest value on top.
int draw_scale(Sheet &sheet, const Legend &legend, int x, int y) {
  const int width = sheet.px(26), height = sheet.px(230);
  const auto last = static_cast<double>(legend.stops.size() - 1);
  for (int row = 0; row < height; ++row) {
    const double at = last * (1.0 - (row + 0.5) / height);
    const auto low = std::min(static_cast<std::size_t>(at), legend.stops.size() - 2);
    const double t = at - static_cast<double>(low);
    const Rgb a = legend.stops[low].colour, b = legend.stops[low + 1].colour;
    const auto mixed = [t](std::uint8_t p, std::uint8_t q) {
      return static_cast<std::uint8_t>(std::lround(p + t * (q - p)));
    };
    fill(sheet.image, {x, y + row, width, 1}, {mixed(a.r, b.r), mixed(a.g, b.g), mixed(a.b, b.b)});
  }
  frame(sheet.image, {x, y, width, height}, sheet.theme.ink);
  const double bottom = legend.stops.front().value, top = legend.stops.back().value;
  for (int k = 0; k < kScaleRows; ++k) {
    const double t = static_cast<double>(k) / (kScaleRows - 1);
    const int at = y + height - 1 - static_cast<int>(std::lround(t * (height - 1)));
    fill(sheet.image, {x + width, at, sheet.px(6), 1}, sheet.theme.ink);
    sheet.write(number_of(bottom + t * (top - bottom), (top - bottom) / (kScaleRows - 1)),
                x + width + sheet.px(12), at + sheet.px(6), kText, sheet.theme.ink);
  }
  return y + height + sheet.px(kLine) + sheet.px(8);
}

int draw_legend(Sheet &sheet, const Legend &legend, int x, int y, int width) {
  if (!legend.title.empty()) {
    const std::string unit = legend.unit.empty() ? "" : legend.unit + " ";
    y = sheet.write_block(unit + legend.title, x, y, width, sheet.theme.ink);
  }
  if (legend.stops.size() > 1) {
    y = draw_scale(sheet, legend, x, y);
    const double beyond = legend.share_below + legend.share_above;
    if (beyond > 5e-4)
      y = sheet.write_block(fmt::format("{:.1f} % of the surface lies beyond the ends.", 100.0 * beyond), x,
                            y, width, sheet.theme.soft_ink);
  }
  for (const LegendEntry &entry : legend.entries) {
    fill(sheet.image, {x, y - sheet.px(13), sheet.px(18), sheet.px(14)}, entry.colour);
    frame(sheet.image, {x, y - sheet.px(13), sheet.px(18), sheet.px(14)}, sheet.theme.ink);
    y = sheet.write_block(entry.name, x + sheet.px(28), y, width - sheet.px(28), sheet.theme.ink);
  }
  if (legend.repeats)
    y = sheet.write_block("More names than colours: a colour may stand for several.", x, y, width,
                          sheet.theme.soft_ink);
  return y + sheet.px(14);
}

bool overlap(const Box &a, const Box &b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// A number on a small tag; `taken` keeps tags apart.
void draw_tag(Sheet &sheet, const PlacedMark &mark, const SheetLayout &layout, std::vector<Box> &taken) {
  const std::string number = std::to_string(mark.finding + 1);
  const int height = sheet.px(23);
  const int width = std::max(sheet.lettering.width_px(number, sheet.px(kText)) + sheet.px(12), height);
  const int x = layout.x + static_cast<int>(std::lround(mark.x_px));
  const int y = layout.y + static_cast<int>(std::lround(mark.y_px));
  const int gap = static_cast<int>(std::lround(mark.radius_px)) + sheet.px(4);
  const int lefts[] = {x + gap, x - gap - width}, tops[] = {y - gap - height, y + gap, y - height / 2};
  Box tag{lefts[0], tops[0], width, height};
  for (int k = 0; k < 6; ++k) {
    const Box box{lefts[k % 2], tops[k / 2], width, height};
    const bool is_within = box.x >= layout.x && box.right() <= layout.x + layout.drawing.width_px &&
                           box.y >= layout.y && box.bottom() <= layout.y + layout.drawing.height_px;
    if (is_within &&
        std::none_of(taken.begin(), taken.end(), [&](const Box &t) { return overlap(t, box); })) {
      tag = box;
      break;
    }
  }
  taken.push_back(tag);
  const Rgb ink = mark.is_hidden ? sheet.theme.soft_ink : sheet.theme.mark;
  fill_rounded(sheet.image, tag, sheet.px(5), ink);
  const int edge = std::max(1, sheet.px(2));
  fill_rounded(sheet.image, {tag.x + edge, tag.y + edge, tag.width - 2 * edge, tag.height - 2 * edge},
               sheet.px(4), sheet.theme.mark_halo);
  sheet.write(number, tag.x + tag.width / 2, tag.y + sheet.px(17), kText, ink, Anchor::centre);
}

std::vector<Box> rings_of(const SheetLayout &layout, const std::vector<PlacedMark> &marks) {
  std::vector<Box> boxes;
  for (const PlacedMark &mark : marks) {
    const int radius = static_cast<int>(std::lround(mark.radius_px));
    boxes.push_back({layout.x + static_cast<int>(std::lround(mark.x_px)) - radius,
                     layout.y + static_cast<int>(std::lround(mark.y_px)) - radius, 2 * radius, 2 * radius});
  }
  return boxes;
}

/// A round step of at least so many mm.
double round_step(double least_mm) {
  const double power = std::pow(10.0, std::floor(std::log10(least_mm)));
  for (double step : {1.0, 2.0, 5.0})
    if (step * power >= least_mm)
      return step * power;
  return 10.0 * power;
}

void draw_across(Sheet &sheet, const SheetAxes &axes) {
  const SheetLayout &layout = sheet.layout;
  const double step = round_step(110.0 * layout.scale * axes.view.across_mm_per_px());
  const double sign = axes.is_mirrored ? -1.0 : 1.0;
  const double a = axes.across_origin_mm + sign * axes.low_mm.x,
               b = axes.across_origin_mm + sign * axes.high_mm.x;
  const double low = std::min(a, b), high = std::max(a, b), slack = 1e-6 * step;
  const int y = layout.y + layout.drawing.height_px;
  // Round numbers on every turn; the last before a wrap may stand too near the next turn's zero.
  const double wrap = axes.across_wrap_mm > 0.0 ? axes.across_wrap_mm : 1e9;
  for (double turn = axes.across_wrap_mm > 0.0 ? std::floor(low / wrap) : 0.0; turn * wrap <= high;
       turn += 1.0) {
    const double from = axes.across_wrap_mm > 0.0 ? std::max(low - turn * wrap, 0.0) : low;
    const double to = axes.across_wrap_mm > 0.0 ? std::min(high - turn * wrap, wrap - 0.7 * step) : high;
    for (double value = std::ceil((from - slack) / step) * step; value <= to + slack; value += step) {
      const Vec2 at = axes.view.pixel(
          {sign * (value + turn * (wrap < 1e9 ? wrap : 0.0) - axes.across_origin_mm), 0.0}, layout.drawing);
      const int x = layout.x + static_cast<int>(std::lround(at.x));
      fill(sheet.image, {x, y - sheet.px(8), 1, sheet.px(8)}, sheet.theme.ink);
      sheet.write(number_of(value, 10.0 * step), x, y - sheet.px(12), kText - 2, sheet.theme.soft_ink,
                  Anchor::centre);
    }
  }
  sheet.write(axes.across_name + " (mm)", layout.x + layout.drawing.width_px - sheet.px(6), y - sheet.px(30),
              kText - 2, sheet.theme.soft_ink, Anchor::right);
}

void draw_up(Sheet &sheet, const SheetAxes &axes) {
  const SheetLayout &layout = sheet.layout;
  const double step = round_step(60.0 * layout.scale * axes.view.up_mm_per_px()), slack = 1e-6 * step;
  for (double value = std::ceil((axes.low_mm.y - slack) / step) * step; value <= axes.high_mm.y + slack;
       value += step) {
    const int y = layout.y + static_cast<int>(std::lround(axes.view.pixel({0.0, value}, layout.drawing).y));
    fill(sheet.image, {layout.x, y, sheet.px(8), 1}, sheet.theme.ink);
    sheet.write(number_of(value, 10.0 * step), layout.x + sheet.px(12), y + sheet.px(5), kText - 2,
                sheet.theme.soft_ink);
  }
  sheet.write(axes.up_name + " (mm)", layout.x + sheet.px(12), layout.y + sheet.px(20), kText - 2,
              sheet.theme.soft_ink);
}

void draw_axes(Sheet &sheet, const SheetAxes &axes) {
  draw_across(sheet, axes);
  draw_up(sheet, axes);
}

void draw_findings(Sheet &sheet, const Caption &caption, int x, int y, int width) {
  if (caption.findings.empty())
    return;
  sheet.write("Found here", x, y, kText + 2, sheet.theme.ink);
  y += sheet.px(kLine + 4);
  std::size_t left = caption.findings.size();
  const int lowest = sheet.layout.whole.height_px - sheet.px(kBottom + kLine);
  for (const CaptionedFinding &finding : caption.findings) {
    if (y > lowest)
      break;
    --left;
    sheet.write(std::to_string(finding.finding + 1), x, y, kText, sheet.theme.ink);
    y = sheet.write_block(finding.words, x + sheet.px(28), y, width - sheet.px(28), sheet.theme.ink) +
        sheet.px(6);
  }
  if (left + caption.findings_left_out > 0)
    sheet.write(fmt::format("and {} more", left + caption.findings_left_out), x, std::min(y, lowest), kText,
                sheet.theme.soft_ink);
}

} // namespace

SheetLayout sheet_layout(PictureSize whole) {
  SheetLayout layout;
  layout.whole = whole;
  layout.scale = std::clamp(whole.width_px / 1600.0, 0.55, 3.0);
  const auto px = [&](double size) { return static_cast<int>(std::lround(size * layout.scale)); };
  layout.x = px(kMargin);
  layout.y = px(kTop);
  layout.drawing = {std::max(whole.width_px - layout.x - px(kColumn + kMargin), 1),
                    std::max(whole.height_px - layout.y - px(kBottom), 1)};
  return layout;
}

CaptionedPicture captioned(const SheetLayout &layout, const Image &drawing, const Drawn &drawn,
                           const Caption &caption, const Theme &theme) {
  Sheet sheet{Image(layout.whole.width_px, layout.whole.height_px, theme.ground), layout, theme, {}};
  place_drawing(sheet, drawing);
  frame(sheet.image, {layout.x - 1, layout.y - 1, layout.drawing.width_px + 2, layout.drawing.height_px + 2},
        theme.rule);
  sheet.write(caption.title, layout.x, sheet.px(48), kTitle, theme.ink);
  sheet.write(caption.subtitle, layout.x, sheet.px(78), kText, theme.soft_ink);
  std::string notes;
  for (const std::string &note : caption.notes)
    notes += (notes.empty() ? "" : "   \u00b7   ") + note;
  sheet.write(notes, layout.x, layout.whole.height_px - sheet.px(14), kText - 1, theme.soft_ink);

  const int column = layout.x + layout.drawing.width_px + sheet.px(22);
  const int width = layout.whole.width_px - column - sheet.px(kMargin * 0.6);
  const int below = draw_legend(sheet, drawn.legend, column, layout.y + sheet.px(16), width);
  draw_findings(sheet, caption, column, below, width);
  if (caption.axes)
    draw_axes(sheet, *caption.axes);
  std::vector<Box> taken = rings_of(layout, drawn.marks);
  for (const PlacedMark &mark : drawn.marks)
    draw_tag(sheet, mark, layout, taken);
  return {std::move(sheet.image), sheet.lettering.has_font()};
}

} // namespace asperity
