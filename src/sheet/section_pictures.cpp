// The part of every plan under one lamp, and the view that can be turned.
#include "html.h"
#include "sheet_page.h"

#include "asperity/report/number_text.h"
#include "asperity/sheet/surface_grid.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string finding_words(const Outcome &outcome, std::size_t index) {
  const Finding &finding = outcome.findings[index];
  return finding.size.empty() ? std::string(name_of(finding.kind))
                              : fmt::format("{}, {} {}", name_of(finding.kind), finding.size[0].name,
                                            quantity_text(finding.size[0].value, finding.size[0].unit));
}

std::string alternative(const SheetPage &page, std::size_t plan) {
  std::string text = fmt::format("Part as plan {} leaves it, under a raking lamp", page.letter(plan));
  const std::vector<PictureMark> &marks = page.input.pictures.of[plan].marks;
  for (const PictureMark &mark : marks)
    text += fmt::format("; {}: {}", mark.finding + 1, finding_words(page.outcome(plan), mark.finding));
  return text + ".";
}

std::string photo(SheetPage &page, std::size_t plan) {
  const PartPicture &picture = page.input.pictures.of[plan];
  std::string out = fmt::format(
      "<figure class=\"card\"><div class=\"photo\"><img src=\"{}\" width=\"{}\" height=\"{}\" alt=\"{}\">",
      png_uri(picture.image), picture.image.width, picture.image.height, typeset(alternative(page, plan)));
  for (const PictureMark &mark : picture.marks) {
    const std::string name = fmt::format("m{}-{}", plan, mark.finding);
    page.rules +=
        fmt::format(".{}{{left:{:.2f}%;top:{:.2f}%}}\n", name, 100.0 * mark.x_share, 100.0 * mark.y_share);
    out += fmt::format("<a class=\"mark {}\" href=\"#f-{}-{}\" aria-label=\"finding {} of plan {}\">{}</a>",
                       name, page.letter(plan), mark.finding + 1, mark.finding + 1, page.letter(plan),
                       mark.finding + 1);
  }
  return out + fmt::format("</div><figcaption>{} <bdi>{}</bdi></figcaption></figure>\n",
                           letter_html(page, plan), escaped(page.outcome(plan).job.title));
}

std::string slider(std::string_view name, std::string_view label, double low, double high, double step,
                   double value) {
  return fmt::format(
      "<div><label for=\"turn-{0}\">{1}: <output id=\"turn-{0}-said\" for=\"turn-{0}\"></output></label>"
      "<input type=\"range\" id=\"turn-{0}\" min=\"{2}\" max=\"{3}\" step=\"{4}\" value=\"{5}\"></div>\n",
      name, label, low, high, step, value);
}

std::string plan_radios(const SheetPage &page) {
  std::string out = "<fieldset><legend>Plan</legend>";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += fmt::format("<label><input type=\"radio\" name=\"turn-plan\" value=\"{}\"{}> {}</label>", k,
                       k == 0 ? " checked" : "", page.letter(k));
  return out + "</fieldset>\n";
}

std::string cells_said(const SheetPage &page) {
  std::string text;
  const Outcome &outcome = page.outcome(0);
  for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
    const SurfaceGrid grid = surface_grid(outcome.job.features[i], outcome.charts[i], kViewCells);
    text += fmt::format("{}<bdi>{}</bdi> {} \u00d7 {} of {} \u00d7 {}", text.empty() ? "" : ", ",
                        escaped(grid.name), grid.columns, grid.rows, grid.chart_columns, grid.chart_rows);
  }
  return text;
}

} // namespace

std::string picture_section(SheetPage &page) {
  const PartPictures &pictures = page.input.pictures;
  std::string out = section_begin("pictures", "Under the same lamp");
  if (pictures.of.empty())
    return out + fmt::format("<p>No pictures: {}.</p>\n</section>\n", escaped(pictures.fault));
  out += fmt::format(
      "<p>{} as predicted, {}. The lamp rakes over the surface from the left; marks catch it as they "
      "would on a part held against a window. The cut surface is drawn {} rougher than it is{}. Numbers "
      "lead to the findings.</p>\n",
      page.plans() == 1 ? "The part" : "Each plan's part", typeset(pictures.from),
      pictures.exaggeration > 1.0 ? fmt::format("{:g} times", pictures.exaggeration) : std::string("no"),
      page.plans() > 1 ? ", equally in all pictures" : "");
  out += page.plans() == 1 ? "<div class=\"grid one\">\n" : "<div class=\"grid\">\n";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += photo(page, k);
  return out + "</div>\n</section>\n";
}

std::string turn_section(const SheetPage &page) {
  std::string out = "<div class=\"screen\">\n" + section_begin("turn", "Turn it yourself");
  out += "<noscript><p>The view that can be turned needs JavaScript; the pictures above show the same "
         "surfaces.</p></noscript>\n<div id=\"stage\"><canvas tabindex=\"0\" role=\"img\" aria-label=\"The "
         "predicted "
         "surfaces in space. Arrow keys turn them, plus and minus zoom.\"></canvas>"
         "<div class=\"note\" hidden><p></p></div></div>\n<div class=\"controls\">\n";
  if (page.plans() > 1)
    out += plan_radios(page);
  out += "<fieldset><legend>Colours</legend><label><input type=\"radio\" name=\"turn-colour\" value=\"lamp\" "
         "checked> as "
         "stock under a lamp</label><label><input type=\"radio\" name=\"turn-colour\" value=\"residual\"> "
         "how far off "
         "(blue too deep, brown stock left)</label></fieldset>\n";
  out += slider("times", "Deviations drawn larger", 0, 2, 0.01, 1) +
         slider("lamp", "Lamp direction (0 = from the left)", 0, 360, 1, 10);
  out += slider("turn", "Turned by", 0, 360, 1, 0) + slider("tilt", "Seen from above by", -85, 85, 1, 24);
  out += "</div>\n<p class=\"small soft\">Drag to turn (on a touch screen sideways, two fingers zoom), or "
         "use the "
         "sliders, or click the view and use arrow keys, + and -. Surfaces are thinned out for this view, "
         "each cell the "
         "mean of its block: " +
         cells_said(page) +
         " cells. Brown: stock no pass reaches, drawn true to size. Only surfaces named in the job are "
         "shown.</p>\n";
  return out + "</section>\n</div>\n";
}

} // namespace asperity
