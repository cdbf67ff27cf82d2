// Pictures of all plans by the one renderer, without a window.
#include "asperity/sheet/part_picture.h"

#include "asperity/base/units.h"
#include "asperity/render/offscreen.h"
#include "asperity/render/scene.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kElevation = rad_from_deg(24.0);
/// What is looked at stands a little beside the middle, so that the lamp rakes over it.
constexpr double kBeside = rad_from_deg(14.0);

double azimuth_of(std::span<const Outcome *const> outcomes) {
  for (const Outcome *outcome : outcomes)
    for (const Finding &finding : outcome->findings)
      if (finding.feature >= 0 && finding.kind == FindingKind::witness_line) {
        const Vec3 off = finding.place_mm - surface_bounds(*outcome).middle();
        return std::atan2(off.y, off.x) + kBeside;
      }
  return rad_from_deg(-60.0);
}

DrawRequest request_for(const Outcome &outcome, double azimuth, PictureSize size) {
  DrawRequest draw;
  draw.size = size;
  draw.px_scale = size.width_px / 1200.0;
  draw.camera = camera_on(surface_points(outcome), size, azimuth, kElevation);
  return draw;
}

PartPicture picture_of(const OffscreenPicture &drawn) {
  PartPicture picture{drawn.image, {}};
  for (const PlacedMark &mark : drawn.drawn.marks)
    if (!mark.is_hidden)
      picture.marks.push_back({mark.finding, mark.x_px / drawn.image.width, mark.y_px / drawn.image.height});
  return picture;
}

} // namespace

PartPictures part_pictures(std::span<const Outcome *const> outcomes, int width_px, int height_px) {
  PartPictures pictures;
  const auto context = OffscreenContext::make(pictures.fault);
  if (!context)
    return pictures;
  Renderer renderer;
  const double azimuth = azimuth_of(outcomes);
  // Small ones first, to see how rough each would be drawn.
  double least = kMostExaggeration;
  for (const Outcome *outcome : outcomes) {
    renderer.show(*outcome);
    const auto small = offscreen_picture(renderer, request_for(*outcome, azimuth, {320, 240}), 1);
    if (!small.fault.empty())
      return {.of = {}, .exaggeration = 1, .from = {}, .fault = small.fault};
    least = std::min(least, small.drawn.exaggeration);
  }
  pictures.exaggeration = std::max(1.0, least);
  for (const Outcome *outcome : outcomes) {
    renderer.show(*outcome);
    DrawRequest draw = request_for(*outcome, azimuth, {width_px, height_px});
    draw.exaggeration = pictures.exaggeration;
    const auto drawn = offscreen_picture(renderer, draw);
    if (!drawn.fault.empty())
      return {.of = {}, .exaggeration = 1, .from = {}, .fault = drawn.fault};
    pictures.of.push_back(picture_of(drawn));
  }
  pictures.from = fmt::format("seen from {:.0f} degrees, {:.0f} degrees above the level",
                              deg_from_rad(std::remainder(azimuth, 2.0 * kPi)), deg_from_rad(kElevation));
  return pictures;
}

} // namespace asperity
