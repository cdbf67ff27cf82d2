// Mean residual along every surface, all plans in one plot.
#include "html.h"
#include "sheet_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

using nlohmann::json;

constexpr double kWidth = 1000.0, kHeight = 200.0; // of the drawing's own units; stretched to the page

struct Line {
  std::size_t plan = 0;
  std::vector<double> place_mm, mean_um; ///< NaN: nothing cut
};

struct Span {
  double low = std::numeric_limits<double>::infinity(), high = -low;
  void hold(double value) {
    if (std::isfinite(value)) {
      low = std::min(low, value);
      high = std::max(high, value);
    }
  }
  bool is_empty() const { return !(low <= high); }
};

std::vector<double> numbers_of(const json &list) {
  std::vector<double> out;
  for (const json &value : list)
    out.push_back(value.is_number() ? value.get<double>() : std::numeric_limits<double>::quiet_NaN());
  return out;
}

/// The profile under `key` of the feature in one plan's prediction; the first key that ends in _mm is its
/// axis.
std::optional<Line> line_of(const SheetPage &page, std::size_t plan, const std::string &feature,
                            const char *key, std::string &axis) {
  for (const json &f : page.predictions[plan].at("features")) {
    if (f.value("name", "") != feature || !f.contains(key))
      continue;
    for (const auto &[name, list] : f.at(key).items())
      if (name.ends_with("_mm")) {
        axis = name.substr(0, name.size() - 3);
        return Line{plan, numbers_of(list), numbers_of(f.at(key).at("mean_residual_um"))};
      }
  }
  return std::nullopt;
}

std::string path_of(const Line &line, const Span &x, const Span &y) {
  std::string d;
  bool is_pen_down = false;
  for (std::size_t k = 0; k < std::min(line.place_mm.size(), line.mean_um.size()); ++k) {
    if (!std::isfinite(line.mean_um[k])) {
      is_pen_down = false;
      continue;
    }
    d += fmt::format("{}{:.1f} {:.1f}", is_pen_down ? "L" : "M",
                     kWidth * (line.place_mm[k] - x.low) / std::max(x.high - x.low, 1e-9),
                     kHeight * (y.high - line.mean_um[k]) / (y.high - y.low));
    is_pen_down = true;
  }
  return d;
}

std::string plot(const SheetPage &page, const std::vector<Line> &lines, const Span &x, const Span &y,
                 const std::string &title, const std::string &axis) {
  std::string out = fmt::format("<figure><figcaption>{}</figcaption><div class=\"plot\"><div class=\"ys "
                                "small\"><span>{}</span><span>{}</span></div>"
                                "<svg viewBox=\"0 0 {} {}\" preserveAspectRatio=\"none\" role=\"img\" "
                                "aria-label=\"{}, from {} to {}\">",
                                title, value_html(y.high, "um"), value_html(y.low, "um"), kWidth, kHeight,
                                title, value_html(y.low, "um"), value_html(y.high, "um"));
  if (y.low < 0.0 && y.high > 0.0)
    out += fmt::format("<path class=\"zero\" d=\"M0 {0:.1f}L{1} {0:.1f}\"/>",
                       kHeight * y.high / (y.high - y.low), kWidth);
  for (const Line &line : lines)
    out += fmt::format("<path class=\"{} d{}\" d=\"{}\"><title>plan {}</title></path>", plan_class(line.plan),
                       line.plan % 6, path_of(line, x, y), page.letter(line.plan));
  return out + fmt::format(
                   "</svg><div class=\"xs small\"><span>{} = {}</span><span>{}</span></div></div></figure>\n",
                   axis, value_html(x.low, "mm"), value_html(x.high, "mm"));
}

std::string feature_plot(const SheetPage &page, const std::string &feature, const char *key) {
  std::vector<Line> lines;
  std::string axis;
  Span x, y;
  for (std::size_t k = 0; k < page.plans(); ++k)
    if (auto line = line_of(page, k, feature, key, axis)) {
      for (std::size_t i = 0; i < std::min(line->place_mm.size(), line->mean_um.size()); ++i) {
        x.hold(line->place_mm[i]);
        y.hold(line->mean_um[i]);
      }
      lines.push_back(std::move(*line));
    }
  if (lines.empty() || y.is_empty())
    return {};
  constexpr double kLeastSpan_um = 1.0, kMargin = 0.06;
  const double margin = std::max(kMargin * (y.high - y.low), 0.5 * (kLeastSpan_um - (y.high - y.low)));
  y.low -= margin;
  y.high += margin;
  return plot(page, lines, x, y, fmt::format("{}, along {}", escaped(feature), axis), axis);
}

std::string legend(const SheetPage &page) {
  std::string out = "<p class=\"legend\">";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += fmt::format(
        "<span><svg class=\"keyline {}\" viewBox=\"0 0 40 12\" aria-hidden=\"true\"><path class=\"d{}\" "
        "d=\"M0 6L40 6\"/></svg>plan {}</span>",
        plan_class(k), k % 6, page.letter(k));
  return out + "</p>\n";
}

} // namespace

std::string profile_section(const SheetPage &page) {
  std::string out = section_begin("profiles", "Profiles");
  out +=
      "<p>Mean distance from the wanted surface over the cells a pass has cut: stock left upwards, too deep "
      "downwards; "
      "dotted: where it is wanted. A narrow mark is averaged over the height or width of the surface.</p>\n";
  if (page.plans() > 1)
    out += legend(page);
  for (const std::string &name : feature_names(page))
    for (const char *key : {"profile_along", "profile_up"})
      out += feature_plot(page, name, key);
  return out + "</section>\n";
}

} // namespace asperity
