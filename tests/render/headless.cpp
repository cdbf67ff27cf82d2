// One OpenGL context without a display for all drawing tests, and small scenes made by formula.
#include "headless.h"

#include "asperity/chart/floor_chart.h"

#include <algorithm>
#include <cmath>

namespace asperity::render_test {

OffscreenContext *context(std::string &fault) {
  static std::string why;
  // Never given back: the driver is unloaded with the program.
  static OffscreenContext *const made = OffscreenContext::make(why).release();
  fault = why;
  return made;
}

Outcome floor_outcome(double width_mm, double height_mm, double spacing_mm,
                      const std::function<double(double, double)> &residual_mm,
                      const std::function<std::uint32_t(double, double)> &owner) {
  Outcome outcome;
  FloorFeature floor;
  floor.name = "plate";
  floor.outline = Outline::rounded_rectangle({0.5 * width_mm, 0.5 * height_mm}, width_mm, height_mm, 0.0);
  FloorChart chart = make_floor_chart({0.0, 0.0}, {width_mm, height_mm}, spacing_mm, 0.0);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      chart.blank_mm[chart.at(i, j)] = 1.0f;
      chart.envelope_mm[chart.at(i, j)] = static_cast<float>(residual_mm(chart.x_mm(i), chart.y_mm(j)));
      chart.owner[chart.at(i, j)] = owner ? owner(chart.x_mm(i), chart.y_mm(j)) : 0;
    }
  outcome.job.features = {floor};
  outcome.charts = {std::move(chart)};
  outcome.job.blank.shape = BlankShape::box;
  outcome.job.blank.centre = {0.5 * width_mm, 0.5 * height_mm};
  outcome.job.blank.size_mm = {width_mm, height_mm};
  outcome.job.blank.z_bottom_mm = -3.0;
  outcome.job.blank.z_top_mm = 1.0;
  PathPiece feed, rapid;
  feed.curve = Curve::line({0.0, 0.5 * height_mm, 2.0}, {width_mm, 0.5 * height_mm, 2.0});
  feed.length_mm = width_mm;
  feed.kind = MoveKind::feed;
  feed.line = 10;
  rapid.curve = Curve::line({width_mm, 0.5 * height_mm, 2.0}, {width_mm, 0.5 * height_mm, 8.0});
  rapid.length_mm = 6.0;
  rapid.line = 20;
  outcome.path.pieces = {feed, rapid};
  return outcome;
}

DrawRequest strip_request(const Outcome &outcome, PictureSize size, Colouring colouring) {
  DrawRequest request;
  request.view = View::strip;
  request.size = size;
  request.colouring = colouring;
  request.lamp = strip_lamp();
  request.things.marks = false;
  const SheetBox box = strip_box(outcome, 0);
  request.sheet = sheet_on(box.low_mm, box.high_mm, size);
  return request;
}

OffscreenPicture drawn(const Outcome &outcome, const DrawRequest &request) {
  Renderer renderer;
  EXPECT_EQ(renderer.fault(), "");
  renderer.show(outcome);
  OffscreenPicture picture = offscreen_picture(renderer, request, 1);
  EXPECT_EQ(picture.fault, "");
  return picture;
}

Rgb pixel_at(const OffscreenPicture &picture, Vec2 place_px) {
  const int x = static_cast<int>(std::floor(place_px.x)), y = static_cast<int>(std::floor(place_px.y));
  EXPECT_TRUE(picture.image.holds(x, y)) << x << ", " << y;
  return picture.image.holds(x, y) ? picture.image.at(x, y) : Rgb{};
}

int difference(Rgb a, Rgb b) {
  return std::max({std::abs(a.r - b.r), std::abs(a.g - b.g), std::abs(a.b - b.b)});
}

double light_of(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

} // namespace asperity::render_test
