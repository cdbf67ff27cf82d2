// What is drawn of charts: colours of known residuals, Lambert's law under the lamp, narrow grooves, lips.
#include "headless.h"

#include "asperity/base/units.h"
#include "asperity/picture/colour_map.h"
#include "named_colours.h"
#include "support/sheave_outcome.h"

#include <cmath>

namespace asperity {

namespace {

using namespace render_test;

/// Colours pass through a table of 513 colours and eight bits.
constexpr int kColourSteps = 2;
constexpr PictureSize kSize{400, 300};

double brightness(Rgb c) { return (light_of(c.r) + light_of(c.g) + light_of(c.b)) / 3.0; }

class SurfaceDrawing : public Drawing {};

/// A roof: up to the ridge at x = 10, then down.
Outcome roof(double slope) {
  return floor_outcome(20, 15, 0.1, [slope](double x, double) { return -slope * std::abs(x - 10.0); });
}

DrawRequest matt(const Outcome &outcome) {
  DrawRequest request = strip_request(outcome, kSize, Colouring::lamp);
  request.exaggeration = 1.0;
  request.lamp.highlight = 0.0;
  request.lamp.strength = 1.0;
  return request;
}

} // namespace

TEST_F(SurfaceDrawing, AFlatChartHasTheColourOfItsResidual) {
  for (double residual_um : {-8.0, -2.5, 0.0, 5.0, 9.0}) {
    const Outcome outcome =
        floor_outcome(20, 15, 0.1, [&](double, double) { return mm_from_um(residual_um); });
    DrawRequest request = strip_request(outcome, kSize, Colouring::residual);
    request.range_low = -10.0;
    request.range_high = 10.0;
    const Rgb seen = pixel_at(drawn(outcome, request), {200, 150});
    EXPECT_LE(difference(seen, residual_colour(residual_um / 10.0)), kColourSteps) << residual_um;
  }
}

TEST_F(SurfaceDrawing, TheLegendsColoursAreThoseOfTheSurface) {
  const Outcome outcome = floor_outcome(20, 15, 0.1, [](double x, double) { return 0.001 * (x - 10.0); });
  const OffscreenPicture picture = drawn(outcome, strip_request(outcome, kSize, Colouring::residual));
  const Legend &legend = picture.drawn.legend;
  ASSERT_GE(legend.stops.size(), 3u);
  EXPECT_EQ(legend.unit, "um");
  EXPECT_DOUBLE_EQ(legend.stops.front().value, -legend.stops.back().value);
  for (const LegendStop &stop : legend.stops) {
    const double x = 10.0 + stop.value; // 1 um a mm
    if (x < 0.5 || x > 19.5)
      continue;
    const DrawRequest request = strip_request(outcome, kSize, Colouring::residual);
    const Vec2 at = request.sheet.pixel({x, 7.0}, kSize);
    constexpr int kPixelWide = 6; // the residual changes by 0.05 um within the pixel
    EXPECT_LE(difference(pixel_at(picture, at), stop.colour), kPixelWide) << stop.value;
  }
}

TEST_F(SurfaceDrawing, LightFollowsLambertsLawOnBothSidesOfARoof) {
  // Lambert's cosine law: light = ambient part + (1 - ambient) times cosine between normal and lamp.
  const double slope = 0.3;
  const Outcome outcome = roof(slope), flat = roof(0.0);
  for (double azimuth_deg : {180.0, 0.0, 150.0}) {
    DrawRequest request = matt(outcome);
    request.lamp.ambient = 0.0;
    request.lamp.azimuth_rad = rad_from_deg(azimuth_deg);
    request.lamp.elevation_rad = rad_from_deg(30.0);
    const OffscreenPicture picture = drawn(outcome, request), level = drawn(flat, request);
    const Vec3 lamp(std::cos(request.lamp.elevation_rad) * std::cos(request.lamp.azimuth_rad),
                    std::cos(request.lamp.elevation_rad) * std::sin(request.lamp.azimuth_rad),
                    std::sin(request.lamp.elevation_rad));
    const double on_level = brightness(pixel_at(level, {100, 150}));
    for (double side : {-1.0, 1.0}) {
      const Vec3 normal = glm::normalize(Vec3(side * slope, 0.0, 1.0)); // the left side faces left
      const double wanted = std::max(glm::dot(normal, lamp), 0.0) / lamp.z;
      const double seen = brightness(pixel_at(picture, {200.0 + 100.0 * side, 150})) / on_level;
      constexpr double kEightBits = 0.02; // of the light, at these brightnesses
      EXPECT_NEAR(seen, wanted, kEightBits * std::max(wanted, 1.0)) << azimuth_deg << " side " << side;
    }
  }
}

TEST_F(SurfaceDrawing, ALampFromTheLeftBrightensWhatFacesLeftAndDarkensTheOtherSide) {
  const Outcome outcome = roof(0.2), flat = roof(0.0);
  const OffscreenPicture picture = drawn(outcome, matt(outcome)), level = drawn(flat, matt(flat));
  EXPECT_GT(brightness(pixel_at(picture, {100, 150})), 1.2 * brightness(pixel_at(level, {100, 150})));
  EXPECT_LT(brightness(pixel_at(picture, {300, 150})), 0.8 * brightness(pixel_at(level, {300, 150})));
}

TEST_F(SurfaceDrawing, ANarrowGrooveShowsThoughTheMeshIsCoarser) {
  // 3 million cells, at most 0.3 million vertices: a vertex every third cell and more. The groove is 0.3 mm
  // wide.
  const auto groove = [](double x, double) {
    const double away = std::abs(x - 50.0) / 0.15;
    return away < 1.0 ? -0.006 * (1.0 - away * away) : 0.0;
  };
  const Outcome outcome = floor_outcome(100, 75, 0.05, groove);
  DrawRequest request = matt(outcome);
  request.exaggeration = 10.0;
  request.sheet = zoomed(request.sheet, 0.1, 200, 150, kSize); // 0.026 mm a pixel
  const OffscreenPicture picture = drawn(outcome, request);
  const double beside = brightness(pixel_at(picture, {150, 150}));
  double darkest = 1.0, brightest = 0.0;
  for (int x = 190; x < 211; ++x) {
    darkest = std::min(darkest, brightness(pixel_at(picture, Vec2(x, 150))));
    brightest = std::max(brightest, brightness(pixel_at(picture, Vec2(x, 150))));
  }
  // derived: differences over two cells of 0.05 mm see a steepest slope of 0.053, ten times that is drawn: by
  // Lambert's law with this lamp the side facing it has 1.7 times the light of the level surface, the other
  // only the ambient. Between texel middles somewhat less is seen.
  EXPECT_LT(darkest, 0.6 * beside);
  EXPECT_GT(brightest, 1.4 * beside);
}

TEST_F(SurfaceDrawing, EveryCellHasTheColourOfTheLineThatMadeIt) {
  const Outcome outcome = floor_outcome(
      20, 15, 0.1, [](double, double) { return 0.0; }, [](double x, double) { return x < 10.0 ? 0u : 1u; });
  const OffscreenPicture picture = drawn(outcome, strip_request(outcome, kSize, Colouring::line));
  const auto colour_of = [](std::uint32_t line) { return named_colours()[colour_of_name(line)]; };
  ASSERT_NE(colour_of(10), colour_of(20));
  EXPECT_LE(difference(pixel_at(picture, {100, 150}), colour_of(10)), kColourSteps);
  EXPECT_LE(difference(pixel_at(picture, {300, 150}), colour_of(20)), kColourSteps);
  ASSERT_EQ(picture.drawn.legend.entries.size(), 2u);
  EXPECT_NEAR(picture.drawn.legend.entries[0].share, 0.5, 0.01); // a column of 200 more or less
}

TEST_F(SurfaceDrawing, AGivenQuantityIsColouredAndItsGapsAreNot) {
  const Outcome outcome = floor_outcome(20, 15, 0.1, [](double, double) { return 0.0; });
  const auto &chart = std::get<FloorChart>(outcome.charts[0]);
  CellQuantity quantity{.name = "chip load", .unit = "mm", .of_feature = {{}}};
  for (std::size_t cell = 0; cell < chart.nx * chart.ny; ++cell)
    quantity.of_feature[0].push_back(cell % chart.nx < chart.nx / 2 ? 0.05f : std::nanf(""));
  DrawRequest request = strip_request(outcome, kSize, Colouring::quantity);
  request.range_low = 0.0;
  request.range_high = 0.1;
  Renderer renderer;
  renderer.show(outcome);
  renderer.set_quantity(quantity);
  const OffscreenPicture picture = offscreen_picture(renderer, request, 1);
  EXPECT_LE(difference(pixel_at(picture, {100, 150}), residual_colour(0.5)), kColourSteps);
  const Rgb gap = pixel_at(picture, {300, 150});
  EXPECT_LT(std::max({gap.r, gap.g, gap.b}) - std::min({gap.r, gap.g, gap.b}), 12); // plain stock is grey
  EXPECT_EQ(picture.drawn.legend.title, "chip load");
}

TEST_F(SurfaceDrawing, TheLipStandsOutInTheColourOfUncutStock) {
  const Outcome outcome = test_support::rim_outcome(0.1);
  const DrawRequest request = strip_request(outcome, {800, 200}, Colouring::lamp);
  const OffscreenPicture picture = drawn(outcome, request);
  const Rgb lip = pixel_at(picture, request.sheet.pixel({60.0, 0.3}, request.size));
  const Rgb wall = pixel_at(picture, request.sheet.pixel({60.0, 5.0}, request.size));
  EXPECT_GT(lip.r - lip.b, 60);
  EXPECT_LT(std::abs(wall.r - wall.b), 12);
}

TEST_F(SurfaceDrawing, NothingIsDrawnBeforeThereIsSomethingToShow) {
  Renderer renderer;
  DrawRequest request;
  request.size = {64, 48};
  const OffscreenPicture picture = offscreen_picture(renderer, request, 1);
  ASSERT_EQ(picture.image.pixels.size(), 64u * 48u);
  for (Rgb pixel : picture.image.pixels)
    ASSERT_EQ(pixel, request.theme.ground);
}

TEST_F(SurfaceDrawing, AnImpossibleSizeIsRefusedInWords) {
  Renderer renderer;
  DrawRequest request;
  request.size = {1 << 20, 10};
  EXPECT_NE(offscreen_picture(renderer, request).fault.find("choose"), std::string::npos);
}

} // namespace asperity
