// The three plots of a trace.
#include "trace_panels.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"
#include "layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr int kWhole_px = 200, kEvaluated_px = 240, kClose_px = 250;
constexpr int kBetween_px = 100; ///< numbers of one panel and heading of the next
constexpr double kMarksShown = 10.0;

std::vector<double> um_of(const std::vector<double> &heights_mm) {
  std::vector<double> um(heights_mm.size());
  std::transform(heights_mm.begin(), heights_mm.end(), um.begin(), um_from_mm);
  return um;
}

/// The cut point nearest to the trace's middle.
std::size_t cut_point_near_middle(const TraceView &view) {
  const std::size_t middle = view.points() / 2;
  for (std::size_t away = 0; away <= middle; ++away) {
    if (middle + away < view.points() && view.is_cut(middle + away))
      return middle + away;
    if (view.is_cut(middle - away))
      return middle - away;
  }
  return middle;
}

/// Heights span what is cut within the plot; all of it where nothing is.
void set_heights_of(Plot &plot, const TraceView &view, const std::vector<double> &heights_mm) {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (const bool only_cut : {true, false}) {
    for (std::size_t i = 0; i < heights_mm.size(); ++i) {
      const double place = view.place_mm(i);
      if (place < plot.x_low_mm || place > plot.x_high_mm || (only_cut && !view.is_cut(i)) ||
          !std::isfinite(heights_mm[i]))
        continue;
      low = std::min(low, um_from_mm(heights_mm[i]));
      high = std::max(high, um_from_mm(heights_mm[i]));
    }
    if (low <= high)
      break;
  }
  set_heights(plot, low <= high ? low : 0.0, low <= high ? high : 0.0);
}

void set_close_up(TracePanels &panels, const TraceView &view) {
  constexpr double kLeastPoints = 20.0, kShareWithoutMarks = 0.05;
  const std::size_t middle = cut_point_near_middle(view);
  panels.mark_mm = mark_distance_mm(view, middle);
  double length = kMarksShown * panels.mark_mm;
  if (!(length > 0.0) || length > view.length_mm()) {
    panels.mark_mm = 0.0;
    length = kShareWithoutMarks * view.length_mm();
  }
  length = std::min(std::max(length, kLeastPoints * view.trace.spacing_mm), view.length_mm());
  panels.close.x_low_mm =
      std::clamp(view.place_mm(middle) - 0.5 * length, view.low_mm(), view.high_mm() - length);
  panels.close.x_high_mm = panels.close.x_low_mm + length;
}

/// Ground tones: evaluated white, the rest greyer, not cut hatched.
void draw_ground(Page &page, const TraceView &view, const Plot &plot) {
  const std::vector<double> bounds = section_bounds_mm(view);
  const auto column = [&](double place_mm) {
    return std::clamp(static_cast<int>(std::lround(plot.x_px(place_mm))), plot.box.x, plot.box.right());
  };
  fill(page.image, plot.box, kNotEvaluated);
  const int left = column(bounds.front()), right = column(bounds.back());
  fill(page.image, {left, plot.box.y, right - left, plot.box.height}, kEvaluated);
  for (std::size_t i = 0; i < view.points(); ++i) {
    if (view.is_cut(i))
      continue;
    std::size_t end = i;
    while (end < view.points() && !view.is_cut(end))
      ++end;
    const double half = 0.5 * view.trace.spacing_mm;
    const int from = column(view.place_mm(i) - half), to = column(view.place_mm(end - 1) + half);
    if (to > plot.box.x && from < plot.box.right())
      hatch_not_cut(page.image, {from, plot.box.y, std::max(1, to - from), plot.box.height});
    i = end;
  }
}

/// A measure: bar with end strokes and words at its middle, or beside it when it is too narrow for them.
void draw_measure(Page &page, const Plot &plot, double from_mm, double to_mm, int y, std::string_view words) {
  const double x0 = std::max<double>(plot.x_px(from_mm), plot.box.x);
  const double x1 = std::min<double>(plot.x_px(to_mm), plot.box.right());
  line(page.image, x0, y, x1, y, 1.6, kInk);
  for (double x : {x0, x1})
    line(page.image, x, y - 6, x, y + 6, 1.6, kInk);
  constexpr int kGap_px = 12;
  const int width = page.lettering.width_px(words, kText_px);
  const bool fits_within = x1 - x0 > width + 2 * kGap_px;
  const bool fits_right = x1 + kGap_px + width < plot.box.right();
  const int x = static_cast<int>(fits_within  ? 0.5 * (x0 + x1 - width)
                                 : fits_right ? x1 + kGap_px
                                              : x0 - kGap_px - width);
  if (fits_within)
    fill(page.image, {x - 6, y - 9, width + 12, 18}, kEvaluated);
  page.write(words, x, y + 6, kText_px, kInk);
}

std::string taller_text(const Plot &plot) {
  const double times = plot.exaggeration();
  const double step = std::pow(10.0, std::floor(std::log10(std::max(times, 1.0))) - 1.0);
  return fmt::format("heights drawn {:.0f} times taller than lengths", std::round(times / step) * step);
}

void write_heading(Page &page, const Plot &plot, std::string_view text) {
  constexpr int kAbove_px = 13;
  page.write(text, plot.box.x, plot.box.y - kAbove_px, kHeading_px, kInk);
  page.write(taller_text(plot), plot.box.right(), plot.box.y - kAbove_px, kText_px, kSoftInk, Anchor::right);
}

/// A light beam from the magnified part of one panel to the panel below.
void draw_beam(Page &page, const Plot &from, const Plot &to) {
  constexpr Rgb kBeam{238, 235, 226};
  const double left = std::max(from.x_px(to.x_low_mm), static_cast<double>(from.box.x));
  const double right = std::min(from.x_px(to.x_high_mm), static_cast<double>(from.box.right()));
  if (right < left)
    return; // the part below is not in this panel
  for (int y = from.box.bottom(); y < to.box.y; ++y) {
    const double t = (y + 0.5 - from.box.bottom()) / (to.box.y - from.box.bottom());
    const int x0 = static_cast<int>(std::lround(left + t * (to.box.x - left)));
    const int x1 = static_cast<int>(std::lround(right + t * (to.box.right() - right)));
    fill(page.image, {x0, y, std::max(1, x1 - x0), 1}, kBeam);
  }
}

void draw_whole(Page &page, const TraceView &view, const TracePanels &panels) {
  const Trace &trace = view.trace;
  const Plot &plot = panels.whole;
  write_heading(page, plot, "All of the trace: profile and its waviness");
  draw_ground(page, view, plot);
  draw_plot_axes(page, plot, trace.along);
  const std::vector<double> profile = um_of(trace.profile_mm), waviness = um_of(trace.waviness_mm);
  draw_curve(page, plot, {trace.begin_mm, trace.spacing_mm, profile}, 1.2, kProfileInk);
  draw_curve(page, plot, {trace.begin_mm, trace.spacing_mm, waviness}, 2.4, kWavinessInk);
  const std::vector<double> bounds = section_bounds_mm(view);
  draw_measure(page, plot, bounds.front(), bounds.back(), plot.box.y + 14,
               fmt::format("evaluation length {:.4g} mm", bounds.back() - bounds.front()));
}

void draw_evaluated(Page &page, const TraceView &view, const TracePanels &panels) {
  const Trace &trace = view.trace;
  const Plot &plot = panels.evaluated;
  write_heading(page, plot, "What is read: roughness, section by section");
  draw_ground(page, view, plot);
  draw_plot_axes(page, plot, trace.along);
  const std::vector<double> bounds = section_bounds_mm(view);
  for (double bound : bounds)
    draw_cut_line(page, plot, bound, kSoftInk);
  const std::vector<double> roughness = um_of(trace.roughness_mm);
  draw_curve(page, plot, {trace.begin_mm, trace.spacing_mm, roughness}, 1.2, kRoughnessInk);
  for (std::size_t i = 0; i + 1 < bounds.size(); ++i)
    page.write(std::to_string(i + 1), static_cast<int>(plot.x_px(0.5 * (bounds[i] + bounds[i + 1]))),
               plot.box.y + 20, kText_px, kSoftInk, Anchor::centre);
  if (trace.reading.fit.sections > 0)
    draw_measure(page, plot, bounds[0], bounds[1], plot.box.bottom() - 14,
                 fmt::format("cutoff lc {:g} mm", trace.reading.settings.cutoff_mm));
}

void draw_close(Page &page, const TraceView &view, const TracePanels &panels) {
  const Trace &trace = view.trace;
  const Plot &plot = panels.close;
  write_heading(page, plot,
                panels.mark_mm > 0.0
                    ? fmt::format("Close-up: {:.0f} marks, {:.3g} mm each", kMarksShown, panels.mark_mm)
                    : "Close-up of the middle");
  draw_ground(page, view, plot);
  draw_plot_axes(page, plot, trace.along);
  const std::vector<double> profile = um_of(trace.profile_mm), waviness = um_of(trace.waviness_mm);
  draw_curve(page, plot, {trace.begin_mm, trace.spacing_mm, waviness}, 3.2, kWavinessInk);
  draw_curve(page, plot, {trace.begin_mm, trace.spacing_mm, profile}, 2.0, kProfileInk);
  if (panels.mark_mm > 0.0)
    draw_measure(page, plot, plot.x_low_mm, plot.x_low_mm + panels.mark_mm, plot.box.bottom() - 14,
                 "one mark");
}

} // namespace

TracePanels trace_panels(const TraceView &view, int x, int y, int width_px) {
  TracePanels panels;
  panels.whole.box = {x, y, width_px, kWhole_px};
  panels.evaluated.box = {x, panels.whole.box.bottom() + kBetween_px, width_px, kEvaluated_px};
  panels.close.box = {x, panels.evaluated.box.bottom() + kBetween_px, width_px, kClose_px};

  panels.whole.x_low_mm = view.low_mm();
  panels.whole.x_high_mm = view.high_mm();
  const std::vector<double> bounds = section_bounds_mm(view);
  const double margin = 0.5 * view.trace.reading.settings.cutoff_mm;
  panels.evaluated.x_low_mm = std::max(bounds.front() - margin, view.low_mm());
  panels.evaluated.x_high_mm = std::min(bounds.back() + margin, view.high_mm());
  set_close_up(panels, view);

  set_heights_of(panels.whole, view, view.trace.profile_mm);
  set_heights_of(panels.evaluated, view, view.trace.roughness_mm);
  set_heights_of(panels.close, view, view.trace.profile_mm);
  return panels;
}

int bottom_of(const TracePanels &panels) { return panels.close.box.bottom() + kAxisBelow_px / 2; }

void draw_trace_panels(Page &page, const TraceView &view, const TracePanels &panels) {
  draw_beam(page, panels.whole, panels.evaluated);
  draw_beam(page, panels.evaluated, panels.close);
  draw_whole(page, view, panels);
  draw_evaluated(page, view, panels);
  draw_close(page, view, panels);
}

void hatch_not_cut(Image &image, const Box &box) {
  constexpr int kPitch_px = 9, kStroke_px = 2;
  constexpr Rgb kGround{226, 223, 214}, kStroke{176, 173, 164};
  for (int y = box.y; y < box.bottom(); ++y)
    for (int x = box.x; x < box.right(); ++x)
      if (image.holds(x, y))
        image.at(x, y) = (x + y) % kPitch_px < kStroke_px ? kStroke : kGround;
}

} // namespace asperity
