// Every surface laid flat in false colour: one scale for all plans, and what the others leave above the
// first.
#include "html.h"
#include "sheet_page.h"

#include "asperity/report/number_text.h"
#include "asperity/sheet/strip_picture.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

constexpr int kStrip_px = 900, kBar_px = 256;

/// One feature in all plans that have it.
struct Shown {
  std::string name;
  std::vector<std::optional<std::size_t>> index; ///< of each plan
  std::vector<std::vector<float>> values_um;     ///< of each plan that has it
  double range_um = 1, seam_mm = 0;
};

Shown shown_feature(const SheetPage &page, const std::string &name) {
  Shown shown{.name = name, .index = {}, .values_um = {}};
  bool has_seam = false;
  for (std::size_t k = 0; k < page.plans(); ++k) {
    const Outcome &outcome = page.outcome(k);
    shown.index.push_back(feature_named(outcome.job, name));
    if (!shown.index[k]) {
      shown.values_um.emplace_back();
      continue;
    }
    const Chart &chart = outcome.charts[*shown.index[k]];
    shown.values_um.push_back(cut_residual_um(chart));
    if (!has_seam)
      shown.seam_mm = common_seam_mm(chart, name, page.input.outcomes);
    has_seam = true;
  }
  shown.range_um = common_range_um(shown.values_um);
  return shown;
}

std::string scale_html(double range_um, std::string_view low, std::string_view high) {
  return fmt::format(
      "<figure class=\"scale\"><img class=\"bar\" src=\"{}\" alt=\"Colour scale from {} to {}\" "
      "width=\"{}\" height=\"16\"><div class=\"ends small\"><span>{} {}</span><span>0</span><span>+{} {}"
      "</span></div></figure>\n",
      png_uri(colour_bar(kBar_px)), value_html(-range_um, "um"), value_html(range_um, "um"), kBar_px,
      value_html(-range_um, "um"), low, value_html(range_um, "um"), high);
}

std::string ends_html(const Strip &strip, bool is_wall, double seam_mm) {
  std::string out = "<div class=\"ends small soft\">";
  if (is_wall)
    out += fmt::format("<span>s = {}</span><span>once round, {}; {} high</span>", value_html(seam_mm, "mm"),
                       value_html(strip.width_mm, "mm"), value_html(strip.height_mm, "mm"));
  else
    out += fmt::format("<span>seen from above</span><span>{} \u00d7 {}</span>",
                       value_html(strip.width_mm, "mm"), value_html(strip.height_mm, "mm"));
  return out + "</div>";
}

std::string strip_figure(const Strip &strip, const std::string &alternative, const std::string &caption,
                         const std::string &ends) {
  return fmt::format(
      "<figure class=\"strip\"><figcaption>{}</figcaption><img src=\"{}\" width=\"{}\" height=\"{}\" "
      "alt=\"{}\">{}</figure>\n",
      caption, png_uri(strip.image), strip.image.width, strip.image.height, alternative, ends);
}

/// Walls below each other, floors beside each other.
std::string strips_begin(const Chart &chart) {
  return std::holds_alternative<WallChart>(chart) ? "<div>\n" : "<div class=\"floors\">\n";
}

const Chart &first_chart(const SheetPage &page, const Shown &shown) {
  std::size_t plan = 0;
  while (!shown.index[plan])
    ++plan;
  return page.outcome(plan).charts[*shown.index[plan]];
}

std::string plan_strip(const SheetPage &page, const Shown &shown, std::size_t plan) {
  const Outcome &outcome = page.outcome(plan);
  const std::size_t i = *shown.index[plan];
  const FeatureResult &result = outcome.features[i];
  const Strip strip =
      strip_picture(outcome.charts[i], shown.values_um[plan], shown.range_um, shown.seam_mm, kStrip_px);
  const std::string words =
      result.cut_share > 0.0
          ? fmt::format("{} on the mean, {} to {}; {} % of it cut", signed_text(result.mean_um, "um"),
                        signed_text(result.lowest_um, "um"), signed_text(result.highest_um, "um"),
                        fixed_text(100.0 * result.cut_share, 1))
          : std::string("no pass reaches it");
  std::string caption =
      fmt::format("{} <span class=\"small\">{}</span>", letter_html(page, plan), typeset(words));
  if (strip.stretch > 1.05)
    caption += fmt::format(" <span class=\"small soft\">(drawn {} times taller than true)</span>",
                           fixed_text(strip.stretch, 1));
  return strip_figure(
      strip,
      fmt::format("{} of plan {} laid flat: {}", escaped(shown.name), page.letter(plan), typeset(words)),
      caption, ends_html(strip, std::holds_alternative<WallChart>(outcome.charts[i]), shown.seam_mm));
}

struct Against {
  std::size_t plan = 0;
  DifferenceChart chart;
};

std::string difference_strip(const SheetPage &page, const Shown &shown, const Against &against,
                             double range_um) {
  const DifferenceChart &d = against.chart;
  const Strip strip = strip_picture(*d.grid, d.difference_um, range_um, shown.seam_mm, kStrip_px);
  const std::string words = d.both_share > 0.0
                                ? fmt::format("{} on the mean, {} to {}{}", signed_text(d.mean_um, "um"),
                                              signed_text(d.lowest_um, "um"), signed_text(d.highest_um, "um"),
                                              d.is_resampled ? "; cells resampled" : "")
                                : std::string("nothing of it is cut in both");
  const std::string name = fmt::format("{} minus {}", page.letter(against.plan), page.letter(0));
  return strip_figure(strip, fmt::format("{}: {}, {}", escaped(shown.name), name, typeset(words)),
                      fmt::format("{} <span class=\"small\">{}</span>", name, typeset(words)),
                      ends_html(strip, std::holds_alternative<WallChart>(*d.grid), shown.seam_mm));
}

std::string differences(const SheetPage &page, const Shown &shown) {
  std::vector<Against> all;
  std::vector<std::vector<float>> values;
  for (std::size_t k = 1; k < page.plans(); ++k)
    for (const FeaturePair &pair : feature_pairs(page.outcome(0).job, page.outcome(k).job).pairs)
      if (shown.index[0] && pair.first == *shown.index[0]) {
        all.push_back(
            {k, difference_chart(page.outcome(0).charts[pair.first], page.outcome(k).charts[pair.other])});
        values.push_back(all.back().chart.difference_um);
      }
  if (all.empty())
    return {};
  const double range_um = common_range_um(values);
  std::string out = fmt::format("<h4>Against plan {}, cell by cell</h4>\n", page.letter(0));
  out += scale_html(range_um, "deeper", "more left");
  out += strips_begin(*all.front().chart.grid);
  for (const Against &against : all)
    out += difference_strip(page, shown, against, range_um);
  return out + "</div>\n";
}

} // namespace

std::string strip_section(const SheetPage &page) {
  std::string out = section_begin("strips", "How far each surface lies from where it is wanted");
  out += "<p>Walls are unrolled, floors seen from above. One scale of colours for all plans: blue is cut too "
         "deep, pale "
         "as wanted, brown stock left. <span class=\"hatch\" role=\"img\" aria-label=\"Striped\"></span> "
         "striped: no pass "
         "cuts there.</p>\n";
  for (const std::string &name : feature_names(page)) {
    const Shown shown = shown_feature(page, name);
    out += fmt::format("<h3><bdi>{}</bdi></h3>\n", escaped(name)) +
           scale_html(shown.range_um, "too deep", "left") + strips_begin(first_chart(page, shown));
    for (std::size_t k = 0; k < page.plans(); ++k)
      if (shown.index[k])
        out += plan_strip(page, shown, k);
    out += "</div>\n";
    if (page.plans() > 1)
      out += differences(page, shown);
  }
  return out + "</section>\n";
}

} // namespace asperity
