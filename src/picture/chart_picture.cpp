// One picture of one feature: headline, colours, relief, legend and findings on one sheet.
#include "asperity/picture/chart_picture.h"

#include "asperity/report/number_text.h"
#include "finding_marks.h"
#include "legend.h"
#include "panel.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::string how_seen(const Plane &plane, const Feature &feature) {
  if (const auto *wall = std::get_if<WallFeature>(&feature)) {
    const std::string size =
        wall->kind == OutlineKind::circle ? fmt::format(", diameter {}", mm_text(wall->diameter_mm)) : "";
    return fmt::format("{} wall{}, unrolled: cut open at s = {} mm, seen from {}",
                       plane.mirrored ? "inside" : "outside", size, fixed_text(plane.seam_mm, 1),
                       plane.mirrored ? "within" : "outside");
  }
  if (const auto *floor = std::get_if<FloorFeature>(&feature))
    return fmt::format("floor at z = {}, seen from above", mm_text(floor->z_mm));
  return "dome, seen from above";
}

std::string lamp_words(const Relief &relief) {
  const std::string lamp = "Raking lamp from the left, ";
  if (relief.is_even)
    return lamp + "nothing stands out";
  const double times = relief.exaggeration;
  return lamp + (times < 1.5 ? std::string("slopes as they are")
                             : fmt::format("slopes {:.0f} times steeper", times));
}

void draw_headline(Page &page, const Layout &layout, const Plane &plane, const Job &job,
                   std::size_t feature) {
  const std::string name = name_of(job.features[feature]);
  page.write(job.title.empty() ? name : name + "  \u2014  " + job.title, kMargin_px, 58, kTitle_px, kInk);
  page.write(how_seen(plane, job.features[feature]) + stretch_words(layout) +
                 ". Predicted by a model, not measured.",
             kMargin_px, 92, kText_px, kSoftInk);
}

/// Arc lengths of the findings that lie on the feature: the wall is not cut open there.
std::vector<double> finding_places(const Chart &chart, std::size_t feature,
                                   const std::vector<Finding> &findings) {
  std::vector<double> places;
  for (const Finding &finding : findings)
    if (finding.feature >= 0 && static_cast<std::size_t>(finding.feature) == feature)
      places.push_back(chart_place(chart, finding.place_mm).x);
  return places;
}

std::size_t dangers_elsewhere(std::size_t feature, const std::vector<Finding> &findings) {
  return static_cast<std::size_t>(std::count_if(findings.begin(), findings.end(), [&](const Finding &f) {
    return f.weight == Weight::danger && f.feature != static_cast<int>(feature);
  }));
}

/// All that is known before drawing.
struct Contents {
  Plane plane;
  Layout layout;
  Raster raster;
  ColourRange range;
  Relief relief;
  std::vector<Mark> marks;
  std::size_t dangers_elsewhere = 0;
};

/// The legend and the list are set once without a sheet to see how much room they take.
int sheet_height(const Lettering &lettering, Contents &c, int width_px) {
  Page measure{Image(), lettering};
  c.layout.list_y = std::max(c.layout.list_y, draw_legend(measure, c.layout, c.raster, c.range) + kMargin_px);
  return draw_list(measure, c.marks, c.dangers_elsewhere, c.layout.list_y, width_px) + kMargin_px;
}

void draw_panels(Page &page, const Contents &c, const Feature &feature) {
  constexpr int kAbove_px = 14;
  page.write("How far the surface lies from where it is wanted", c.layout.colour.x,
             c.layout.colour.y - kAbove_px, kHeading_px, kInk);
  paint_colours(page, c.layout.colour, c.raster, c.range);
  draw_axes(page, c.layout.colour, c.plane, feature);
  draw_marks(page, c.layout.colour, c.plane, c.marks);
  page.write(lamp_words(c.relief), c.layout.relief.x, c.layout.relief.y - kAbove_px, kHeading_px, kInk);
  paint_relief(page, c.layout.relief, c.raster, c.relief);
  draw_axes(page, c.layout.relief, c.plane, feature);
}

} // namespace

ChartPicture chart_picture(const Chart &chart, const Job &job, std::size_t feature,
                           const std::vector<Finding> &findings, const PictureOptions &options) {
  const Lettering lettering;
  const int width_px = std::clamp(options.width_px, kNarrowestPicture_px, kWidestPicture_px);
  Contents c;
  c.plane = plane_of(chart, finding_places(chart, feature, findings));
  if (feature >= job.features.size() || !(c.plane.width_mm > 0.0) || !(c.plane.height_mm > 0.0))
    return {Image(width_px, 100, kPaper), lettering.has_font()};

  // Bring the chart to the panel's pixels and choose what the colours and the lamp show.
  c.layout = layout_for(c.plane, width_px);
  c.raster = rasterise(chart, c.plane, c.layout.colour.width, c.layout.colour.height);
  c.range = colour_range(c.raster, options.range_um);
  c.relief = relief_of(c.raster, c.range);
  c.marks = marks_on(chart, c.plane, feature, findings);
  c.dangers_elsewhere = dangers_elsewhere(feature, findings);

  const int height_px = sheet_height(lettering, c, width_px);
  Page page{Image(width_px, height_px, kPaper), lettering};
  draw_headline(page, c.layout, c.plane, job, feature);
  draw_panels(page, c, job.features[feature]);
  draw_legend(page, c.layout, c.raster, c.range);
  draw_list(page, c.marks, c.dangers_elsewhere, c.layout.list_y, width_px);
  return {std::move(page.image), lettering.has_font()};
}

} // namespace asperity
