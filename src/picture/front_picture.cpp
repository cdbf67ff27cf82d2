// Trials by two numbers, the front among them.
#include "asperity/picture/study_picture.h"

#include "asperity/report/number_text.h"
#include "layout.h"
#include "study_plot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kPlotHeight_px = 470;
constexpr int kLeft_px = 108;
constexpr std::size_t kMostListed = 12;

std::string number_words(const StudyView &view, const FrontPoint &point) {
  return fmt::format("{}, {}", quantity_text(point.x, view.front.x.unit),
                     quantity_text(point.y, view.front.y.unit));
}

/// Points of the front, the best along the axis first.
std::vector<FrontPoint> front_points(const StudyView &view) {
  std::vector<FrontPoint> points;
  for (const FrontPoint &point : view.front.points)
    if (point.is_on_front)
      points.push_back(point);
  const bool is_higher = view.front.x.better == Better::higher;
  std::stable_sort(points.begin(), points.end(), [&](const FrontPoint &a, const FrontPoint &b) {
    return is_higher ? a.x > b.x : a.x < b.x;
  });
  return points;
}

StudyPlot plot_of(const StudyView &view, const Box &box) {
  std::vector<double> xs{wanted_limit(view, view.front.x)}, ys{wanted_limit(view, view.front.y)};
  for (const FrontPoint &point : view.front.points) {
    xs.push_back(point.x);
    ys.push_back(point.y);
  }
  return {box, range_of(xs), range_of(ys)};
}

void draw_limits(Page &page, const StudyView &view, const StudyPlot &plot) {
  const double along = wanted_limit(view, view.front.x), up = wanted_limit(view, view.front.y);
  if (std::isfinite(up)) {
    const double y = plot.y_px(up);
    dashed_line(page.image, plot.box.x, y, plot.box.right(), y, kWantedInk);
    const std::string words = fmt::format("wanted: at most {}", quantity_text(up, view.front.y.unit));
    const int width = page.lettering.width_px(words, kText_px), below = static_cast<int>(y) - 7;
    fill(page.image, {plot.box.right() - 12 - width, below - 15, width + 8, 19}, kPlotPaper);
    page.write(words, plot.box.right() - 8, below, kText_px, kWantedInk, Anchor::right);
  }
  if (std::isfinite(along)) {
    const double x = plot.x_px(along);
    dashed_line(page.image, x, plot.box.y, x, plot.box.bottom(), kWantedInk);
  }
}

/// The edge of what can be had: from each point on, its other number is within reach.
void draw_front_line(Page &page, const StudyView &view, const StudyPlot &plot) {
  const auto has_side = [](Better better) { return better == Better::lower || better == Better::higher; };
  if (!has_side(view.front.x.better) || !has_side(view.front.y.better))
    return;
  const std::vector<FrontPoint> points = front_points(view);
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double x0 = plot.x_px(points[i].x), y0 = plot.y_px(points[i].y);
    const double x1 = plot.x_px(points[i + 1].x), y1 = plot.y_px(points[i + 1].y);
    line(page.image, x0, y0, x1, y0, 2.0, kFrontInk);
    line(page.image, x1, y0, x1, y1, 2.0, kFrontInk);
  }
}

void draw_points(Page &page, const StudyView &view, const StudyPlot &plot) {
  constexpr double kRadius_px = 5.5;
  for (const FrontPoint &point : view.front.points) {
    const Trial &trial = view.results.trials[point.trial];
    const bool is_well = trial.dangers == 0 && missed_checks(trial, view.limits).empty();
    const double x = plot.x_px(point.x), y = plot.y_px(point.y);
    if (is_well)
      dot(page.image, x, y, kRadius_px, kMetInk);
    else
      ring(page.image, x, y, kRadius_px - 1.0, 2.0, kMissedInk);
    if (point.is_on_front)
      ring(page.image, x, y, kRadius_px + 4.0, 2.0, kFrontInk);
    if (view.best.best == point.trial)
      ring(page.image, x, y, kRadius_px + 9.0, 3.0, kInk);
  }
}

/// Numbers beside the points of the front, where they do not lie on each other.
void write_numbers(Page &page, const StudyView &view, const StudyPlot &plot) {
  constexpr double kApart_px = 26.0;
  std::vector<Vec2> taken;
  for (const FrontPoint &point : front_points(view)) {
    const Vec2 at{plot.x_px(point.x), plot.y_px(point.y)};
    if (std::any_of(taken.begin(), taken.end(),
                    [&](Vec2 other) { return glm::length(other - at) < kApart_px; }))
      continue;
    taken.push_back(at);
    page.write(fmt::format("{}", view.results.trials[point.trial].combination + 1),
               static_cast<int>(at.x) + 14, static_cast<int>(at.y) - 11, kText_px, kFrontInk);
  }
}

/// What the marks mean; returns the y below.
int draw_key(Page &page, int y) {
  int x = kLeft_px;
  const auto entry = [&](const char *words, auto mark) {
    mark(x + 9.0, y - 6.0);
    page.write(words, x + 28, y, kText_px, kInk);
    x += 28 + page.lettering.width_px(words, kText_px) + 34;
  };
  entry("meets everything wanted", [&](double a, double b) { dot(page.image, a, b, 5.5, kMetInk); });
  entry("does not", [&](double a, double b) { ring(page.image, a, b, 4.5, 2.0, kMissedInk); });
  entry("front: no other beats it in both",
        [&](double a, double b) { ring(page.image, a, b, 8.0, 2.0, kFrontInk); });
  entry("best plan", [&](double a, double b) { ring(page.image, a, b, 9.0, 3.0, kInk); });
  return y + kLine_px;
}

/// The front in words; returns the y below.
int draw_list(Page &page, const StudyView &view, int y, int width_px) {
  const std::vector<FrontPoint> points = front_points(view);
  for (std::size_t i = 0; i < points.size() && i < kMostListed; ++i, y += kLine_px) {
    const std::size_t combination = view.results.trials[points[i].trial].combination;
    const std::string words = fmt::format("{}: {}; {}{}", combination + 1, number_words(view, points[i]),
                                          combination_text(view.results.head.grid, combination),
                                          view.best.best == points[i].trial ? "; best plan" : "");
    page.write(fitted_lines(page.lettering, words, kText_px, width_px - 2 * kMargin_px).front(), kLeft_px, y,
               kText_px, kInk);
  }
  if (points.size() > kMostListed) {
    page.write(fmt::format("and {} more", points.size() - kMostListed), kLeft_px, y, kText_px, kSoftInk);
    y += kLine_px;
  }
  return y;
}

/// All of it on a sheet, or only measured when the sheet is empty; returns the height.
int draw(Page &page, const StudyView &view, int width_px) {
  page.write(fmt::format("{}  against  {}", view.front.y.what, view.front.x.what), kMargin_px, 52, kTitle_px,
             kInk);
  page.write(fmt::format("{}: {} of {} combinations. Predicted by a model, not measured.",
                         view.results.head.job_file.filename().string(), view.front.points.size(),
                         view.all()),
             kMargin_px, 82, kText_px, kSoftInk);
  const StudyPlot plot = plot_of(view, {kLeft_px, 108, width_px - kLeft_px - kMargin_px, kPlotHeight_px});
  draw_upright_axis(page, plot, true);
  draw_numbers_along(page, plot);
  page.write(words_of(view.front.x), plot.box.x + plot.box.width / 2, plot.box.bottom() + 54, kText_px, kInk,
             Anchor::centre);
  page.lettering.draw_upwards(page.image, words_of(view.front.y), 34, plot.box.y + plot.box.height / 2,
                              kText_px, kInk);
  draw_front_line(page, view, plot);
  draw_limits(page, view, plot);
  draw_points(page, view, plot);
  write_numbers(page, view, plot);
  const int below = draw_key(page, plot.box.bottom() + 92);
  return draw_list(page, view, below + 8, width_px) + kMargin_px / 2;
}

} // namespace

ChartPicture front_picture(const StudyView &view, int width_px) {
  const Lettering lettering;
  Page measure{Image(), lettering};
  const int height_px = draw(measure, view, width_px);
  Page page{Image(width_px, height_px, kPaper), lettering};
  draw(page, view, width_px);
  return {std::move(page.image), lettering.has_font()};
}

} // namespace asperity
