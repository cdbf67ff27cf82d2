// One panel: the chart's pixels, its frame and its axes.
#include "panel.h"

#include "asperity/base/units.h"
#include "asperity/picture/colour_map.h"
#include "ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr Rgb kStanding{86, 92, 100}, kStandingHatch{206, 202, 192};
constexpr Rgb kSkin{255, 255, 255}, kSkinHatch{140, 144, 150};

bool on_hatch(int along, int pitch, int width) { return ((along % pitch) + pitch) % pitch < width; }

Rgb lit(float light) {
  // Warm plaster: a flat surface is a middle tone, so that both sides of a groove show.
  constexpr double kFlat = 0.60, kGamma = 1.15;
  const double tone = std::pow(std::clamp(kFlat * static_cast<double>(light), 0.0, 1.0), kGamma);
  const auto byte = [tone](double full) { return static_cast<std::uint8_t>(std::lround(full * tone)); };
  return {byte(255.0), byte(248.0), byte(236.0)};
}

template <class Shade> void paint(Page &page, const Box &panel, const Raster &raster, Shade shade) {
  for (int y = 0; y < raster.height; ++y)
    for (int x = 0; x < raster.width; ++x) {
      const Surface surface = raster.surface[raster.at(x, y)];
      const Rgb colour = surface == Surface::cut ? shade(raster.at(x, y)) : surface_tone(surface, x, y);
      if (page.image.holds(panel.x + x, panel.y + y))
        page.image.at(panel.x + x, panel.y + y) = colour;
    }
}

constexpr int kTick_px = 7;
constexpr int kTickGap_px = 90; ///< least distance of ticks along the picture
constexpr int kTickRise_px = 45;

void tick_below(Page &page, const Box &panel, double offset_px, const std::string &text, int row) {
  const int x = panel.x + static_cast<int>(std::lround(offset_px));
  if (row == 0)
    fill(page.image, {std::min(x, panel.right() - 1), panel.bottom(), 1, kTick_px}, kInk);
  page.write(text, x, panel.bottom() + kTick_px + 17 + row * 23, kText_px, row == 0 ? kInk : kSoftInk,
             Anchor::centre);
}

void mark_along_wall(Page &page, const Box &panel, const Plane &plane, const WallFeature &wall) {
  const double px_per_mm = panel.width / plane.width_mm;
  const Ticks ticks = ticks_between(0.0, plane.width_mm, kTickGap_px / px_per_mm);
  for (double s : ticks.values) {
    const bool crowds_zero = plane.width_mm - s < 0.5 * kTickGap_px / px_per_mm;
    if (!crowds_zero)
      tick_below(page, panel, plane.x_offset_mm(s) * px_per_mm, tick_text(s, ticks.decimals), 0);
  }
  page.write("s (mm)", panel.x - 14, panel.bottom() + kTick_px + 17, kText_px, kInk, Anchor::right);
  if (wall.kind != OutlineKind::circle)
    return;
  for (int deg = 0; deg < 360; deg += 45) {
    const double offset_px = plane.x_offset_mm(plane.width_mm * deg / 360.0) * px_per_mm;
    constexpr double kName_px = 36.0; // room for the name of the row, left of the panel
    if (offset_px > kName_px)
      tick_below(page, panel, offset_px, fmt::format("{}\u00b0", deg), 1);
  }
  page.write("round", panel.x - 14, panel.bottom() + kTick_px + 40, kText_px, kSoftInk, Anchor::right);
}

void mark_along_floor(Page &page, const Box &panel, const Plane &plane) {
  const double px_per_mm = panel.width / plane.width_mm;
  const Ticks ticks = ticks_between(plane.x_low_mm, plane.x_low_mm + plane.width_mm, kTickGap_px / px_per_mm);
  for (double x : ticks.values)
    tick_below(page, panel, plane.x_offset_mm(x) * px_per_mm, tick_text(x, ticks.decimals), 0);
  page.write("x (mm)", panel.x + panel.width / 2, panel.bottom() + kTick_px + 40, kText_px, kInk,
             Anchor::centre);
}

void mark_upwards(Page &page, const Box &panel, const Plane &plane, std::string_view name) {
  const double px_per_mm = panel.height / plane.height_mm;
  const Ticks ticks =
      ticks_between(plane.y_low_mm, plane.y_low_mm + plane.height_mm, kTickRise_px / px_per_mm);
  for (double value : ticks.values) {
    const int y = panel.bottom() - static_cast<int>(std::lround(plane.y_offset_mm(value) * px_per_mm));
    fill(page.image, {panel.x - kTick_px, std::clamp(y, panel.y, panel.bottom() - 1), kTick_px, 1}, kInk);
    page.write(tick_text(value, ticks.decimals), panel.x - kTick_px - 4, y + 6, kText_px, kInk,
               Anchor::right);
  }
  page.lettering.draw_upwards(page.image, name, panel.x - 56, panel.y + panel.height / 2, kText_px, kInk);
}

} // namespace

Rgb surface_tone(Surface surface, int x, int y) {
  switch (surface) {
  case Surface::lip:
    return on_hatch(x + y, 10, 3) ? kStandingHatch : kStanding;
  case Surface::standing:
    return on_hatch(x - y, 16, 3) ? kStandingHatch : kStanding;
  case Surface::skin:
    return on_hatch(x, 8, 2) && on_hatch(y, 8, 2) ? kSkinHatch : kSkin;
  case Surface::outside:
  case Surface::cut:
    break;
  }
  return kPaper;
}

void paint_colours(Page &page, const Box &panel, const Raster &raster, const ColourRange &range) {
  paint(page, panel, raster, [&](std::size_t pixel) {
    return residual_colour(range.place(static_cast<double>(raster.residual_um[pixel])));
  });
}

void paint_relief(Page &page, const Box &panel, const Raster &raster, const Relief &relief) {
  paint(page, panel, raster, [&](std::size_t pixel) { return lit(relief.light[pixel]); });
}

void draw_axes(Page &page, const Box &panel, const Plane &plane, const Feature &feature) {
  frame(page.image, {panel.x - 1, panel.y - 1, panel.width + 2, panel.height + 2}, kInk);
  if (const auto *wall = std::get_if<WallFeature>(&feature); wall && plane.wraps)
    mark_along_wall(page, panel, plane, *wall);
  else
    mark_along_floor(page, panel, plane);
  mark_upwards(page, panel, plane, plane.wraps ? "z (mm)" : "y (mm)");
}

} // namespace asperity
