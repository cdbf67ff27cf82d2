// The mean of a number at each value of each varied key.
#include "asperity/picture/study_picture.h"

#include "asperity/report/number_text.h"
#include "layout.h"
#include "study_plot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kPanelHeight_px = 260;
constexpr int kRowHeight_px = kPanelHeight_px + 118;
constexpr int kLeft_px = 108;
constexpr int kGap_px = 34;
constexpr int kMostInRow = 4;
constexpr int kTop_px = 112;

NumberRange range_of_means(const Influence &influence) {
  std::vector<double> means;
  for (const FactorInfluence &factor : influence.factors)
    means.insert(means.end(), factor.level_mean.begin(), factor.level_mean.end());
  return range_of(means);
}

void draw_means(Page &page, const StudyPlot &plot, const FactorInfluence &factor) {
  for (std::size_t v = 0; v < factor.level_mean.size(); ++v) {
    const double x = plot.x_px(static_cast<double>(v)), y = plot.y_px(factor.level_mean[v]);
    if (!std::isfinite(y))
      continue;
    if (v > 0 && std::isfinite(factor.level_mean[v - 1]))
      line(page.image, plot.x_px(static_cast<double>(v) - 1.0), plot.y_px(factor.level_mean[v - 1]), x, y,
           2.0, kFrontInk);
    dot(page.image, x, y, 5.5, kFrontInk);
  }
}

void draw_panel(Page &page, const StudyView &view, std::size_t f, const StudyPlot &plot, bool is_first) {
  const Factor &factor = view.results.head.grid.factors[f];
  const FactorInfluence &influence = view.influence.factors[f];
  draw_upright_axis(page, plot, is_first);
  const double middle = plot.y_px(view.influence.mean);
  dashed_line(page.image, plot.box.x, middle, plot.box.right(), middle, kSoftInk);
  std::vector<std::string> words;
  for (const std::string &value : factor.values)
    words.push_back(shown_value(value));
  draw_words_along(page, plot, words);
  draw_means(page, plot, influence);
  page.write(factor.key, plot.box.x, plot.box.y - 12, kText_px, kInk);
  page.write(fmt::format("moves {}, share {}", quantity_text(influence.range, view.front.y.unit),
                         share_text(influence.share)),
             plot.box.x, plot.box.bottom() + 54, kText_px, kSoftInk);
}

} // namespace

ChartPicture influence_picture(const StudyView &view, int width_px) {
  const Lettering lettering;
  const auto panels = static_cast<int>(view.influence.factors.size());
  const int in_row = std::clamp(panels, 1, kMostInRow);
  const int rows = std::max(1, (panels + in_row - 1) / in_row);
  Page page{Image(width_px, kTop_px + rows * kRowHeight_px + 20, kPaper), lettering};
  page.write(fmt::format("What moves the {}", words_of(view.front.y)), kMargin_px, 46, kTitle_px, kInk);
  page.write(
      fmt::format("Means over {} predicted combinations; dashed: mean of all. Values working together: "
                  "share {}.{}",
                  view.influence.count, share_text(view.influence.together_share),
                  view.influence.is_balanced ? "" : " Combinations are missing: shares overlap."),
      kMargin_px, 74, kText_px, kSoftInk);
  const NumberRange up = range_of_means(view.influence);
  const int panel_width = (width_px - kLeft_px - kMargin_px - (in_row - 1) * kGap_px) / in_row;
  for (int i = 0; i < panels; ++i) {
    const auto f = static_cast<std::size_t>(i);
    const double last = static_cast<double>(view.influence.factors[f].level_mean.size()) - 1.0;
    const Box box{kLeft_px + i % in_row * (panel_width + kGap_px), kTop_px + 18 + i / in_row * kRowHeight_px,
                  panel_width, kPanelHeight_px};
    draw_panel(page, view, f, {box, {-0.5, last + 0.5}, up}, i % in_row == 0);
  }
  return {std::move(page.image), lettering.has_font()};
}

} // namespace asperity
