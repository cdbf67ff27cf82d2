// One picture of a feature's local roughness.
#include "asperity/picture/ra_map_picture.h"

#include "asperity/picture/colour_map.h"
#include "asperity/report/number_text.h"
#include "asperity/report/trace_view.h"
#include "layout.h"
#include "panel.h"
#include "ra_scale.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr Rgb kTooLittle{214, 212, 204}; ///< cut, but too little of the window for a value

struct Contents {
  const FeatureRoughness &roughness;
  const Chart &chart;
  const Job &job;
  std::size_t feature = 0;
  Plane plane{};
  Layout layout{};
  Raster raster{};
  RaScale scale{};
};

/// The map's windows divide the chart evenly; NaN where it has none.
double ra_at(const Contents &c, double x_mm, double y_mm) {
  const FeatureRoughness &map = c.roughness;
  const auto index = [](double share, std::size_t count) {
    const double at = std::floor(share * static_cast<double>(count));
    return static_cast<std::size_t>(std::clamp(at, 0.0, static_cast<double>(count) - 1.0));
  };
  if (map.map_columns == 0 || map.map_rows == 0)
    return std::nan("");
  const std::size_t column = index(x_mm / c.plane.width_mm, map.map_columns);
  const std::size_t row = index(y_mm / c.plane.height_mm, map.map_rows);
  return static_cast<double>(map.map_ra_um[row * map.map_columns + column]);
}

/// From the left edge of the map (not of the picture: a wall is cut open elsewhere and may be mirrored).
double map_offset_mm(const Plane &plane, double picture_offset_mm) {
  if (!plane.wraps)
    return picture_offset_mm;
  const double s = plane.mirrored ? plane.seam_mm - picture_offset_mm : plane.seam_mm + picture_offset_mm;
  return s - plane.width_mm * std::floor(s / plane.width_mm);
}

double ra_under(const Contents &c, int x, int y) {
  return ra_at(c, map_offset_mm(c.plane, (x + 0.5) * c.raster.x_mm_per_px),
               (c.raster.height - y - 0.5) * c.raster.y_mm_per_px);
}

void paint_map(Page &page, const Contents &c) {
  const Box &panel = c.layout.colour;
  for (int y = 0; y < c.raster.height; ++y)
    for (int x = 0; x < c.raster.width; ++x) {
      const Surface surface = c.raster.surface[c.raster.at(x, y)];
      const double ra_um = ra_under(c, x, y);
      const Rgb colour = surface != Surface::cut ? surface_tone(surface, x, y)
                         : std::isfinite(ra_um)  ? roughness_colour(c.scale.place(ra_um))
                                                 : kTooLittle;
      if (page.image.holds(panel.x + x, panel.y + y))
        page.image.at(panel.x + x, panel.y + y) = colour;
    }
}

/// A ring round the roughest place, with its value on a tag that stays within the panel.
void mark_worst(Page &page, const Contents &c) {
  constexpr double kRing_px = 11.0;
  constexpr int kTagHeight_px = 26, kGap_px = 18;
  const Box &panel = c.layout.colour;
  const Vec2 place = chart_place(c.chart, c.roughness.worst_place_mm);
  if (!std::isfinite(place.x) || !std::isfinite(place.y))
    return;
  const double x =
      panel.x + std::clamp(c.plane.x_offset_mm(place.x) / c.plane.width_mm, 0.0, 1.0) * panel.width;
  const double y =
      panel.bottom() - std::clamp(c.plane.y_offset_mm(place.y) / c.plane.height_mm, 0.0, 1.0) * panel.height;
  ring(page.image, x, y, kRing_px, 5.5, kPaper);
  ring(page.image, x, y, kRing_px, 2.4, kInk);

  const std::string words = "roughest: " + fine_um_text(c.roughness.worst_ra_um);
  const int width = page.lettering.width_px(words, kText_px) + 18;
  const bool fits_right = x + kGap_px + width < panel.right();
  const int left = static_cast<int>(fits_right ? x + kGap_px : x - kGap_px - width);
  const int top =
      std::clamp(static_cast<int>(y) - kTagHeight_px / 2, panel.y + 2, panel.bottom() - kTagHeight_px - 2);
  fill_rounded(page.image, {left, top, width, kTagHeight_px}, 6.0, kInk);
  fill_rounded(page.image, {left + 2, top + 2, width - 4, kTagHeight_px - 4}, 4.0, kPaper);
  page.write(words, left + width / 2, top + 19, kText_px, kInk, Anchor::centre);
}

int draw_words(Page &page, const Contents &c, int y, int width_px) {
  const FeatureRoughness &r = c.roughness;
  const int room = width_px - 2 * kMargin_px;
  if (!r.measured)
    return write_lines(page, "Nothing of this surface is cut, so there is no roughness to show.", kMargin_px,
                       y, room, kInk);
  y = write_lines(page,
                  fmt::format("Roughest place: Ra {}{}.", fine_um_text(r.worst_ra_um),
                              r.worst_line > 0 ? fmt::format(", made by program line {}", r.worst_line) : ""),
                  kMargin_px, y, room, kInk) +
      4;
  y = write_lines(
          page,
          fmt::format(
              "At a usual place: Ra {}, Rz {}; lay: {}. With what the material adds by itself Ra is {} "
              "to {}.",
              fine_um_text(r.ra_um), fine_um_text(r.rz_um), r.lay, fixed_text(r.ra_band.low_um, 2),
              fine_um_text(r.ra_band.high_um)),
          kMargin_px, y, room, kInk) +
      4;
  return write_lines(
      page,
      "Each square is a window of about 0.8 mm: mean deviation of the swept surface from its mean "
      "surface (cutoff 0.8 mm), joined with the Ra of the single tooth marks there.",
      kMargin_px, y, room, kSoftInk);
}

bool has_unread(const Contents &c) {
  for (int y = 0; y < c.raster.height; ++y)
    for (int x = 0; x < c.raster.width; ++x)
      if (c.raster.is_cut(x, y) && !std::isfinite(ra_under(c, x, y)))
        return true;
  return false;
}

int draw_side(Page &page, const Contents &c) {
  const int x = c.layout.legend_x, width = c.layout.legend_width;
  int y = draw_ra_bar(page, c.scale, finish_of(c.job.features[c.feature]).ra_um, x, c.layout.legend_y, width);
  if (has_unread(c)) {
    const Box swatch{x, y, 38, 24};
    fill(page.image, swatch, kTooLittle);
    frame(page.image, {swatch.x - 1, swatch.y - 1, swatch.width + 2, swatch.height + 2}, kInk);
    y = write_lines(page, "cut, but too little of the window for a value", swatch.right() + 10, y + 18,
                    width - swatch.width - 10, kInk);
  }
  return draw_uncut_tones(page, c.raster, x, y, width);
}

void draw_headline(Page &page, const Contents &c) {
  const std::string name = name_of(c.job.features[c.feature]);
  page.write(fmt::format("{}  \u2014  how rough it is, place by place", name), kMargin_px, 58, kTitle_px,
             kInk);
  page.write(fmt::format("{}{}Predicted by a model, not measured{}.", c.job.title,
                         c.job.title.empty() ? "" : ". ", stretch_words(c.layout)),
             kMargin_px, 92, kText_px, kSoftInk);
}

} // namespace

ChartPicture ra_map_picture(const FeatureRoughness &roughness, const Chart &chart, const Job &job,
                            std::size_t feature, const PictureOptions &options) {
  const Lettering lettering;
  const int width_px = std::clamp(options.width_px, kNarrowestPicture_px, kWidestPicture_px);
  Contents c{.roughness = roughness, .chart = chart, .job = job, .feature = feature};
  // Cut open far from the roughest place, so that its surroundings stay whole.
  c.plane = plane_of(chart, roughness.measured ? std::vector{chart_place(chart, roughness.worst_place_mm).x}
                                               : std::vector<double>());
  if (feature >= job.features.size() || !(c.plane.width_mm > 0.0) || !(c.plane.height_mm > 0.0))
    return {Image(width_px, 100, kPaper), lettering.has_font()};
  c.layout = single_panel_layout(c.plane, width_px);
  c.raster = rasterise(chart, c.plane, c.layout.colour.width, c.layout.colour.height);
  c.scale = ra_scale(roughness.map_ra_um, options.range_um);

  Page measure{Image(), lettering};
  const int words_y = std::max(c.layout.list_y, draw_side(measure, c) + kMargin_px);
  const int height_px = draw_words(measure, c, words_y, width_px) + kMargin_px;
  Page page{Image(width_px, height_px, kPaper), lettering};
  draw_headline(page, c);
  paint_map(page, c);
  draw_axes(page, c.layout.colour, c.plane, job.features[feature]);
  if (roughness.measured)
    mark_worst(page, c);
  draw_side(page, c);
  draw_words(page, c, words_y, width_px);
  return {std::move(page.image), lettering.has_font()};
}

} // namespace asperity
