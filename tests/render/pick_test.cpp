// What lies under a pixel: the cell, the piece of path or the finding that is seen there.
#include "headless.h"

#include "support/sheave_outcome.h"

#include <cmath>

namespace asperity {

namespace {

using namespace render_test;

class Picking : public Drawing {};

Vec2 pixel_of(const DrawRequest &request, const Bounds &bounds, Vec3 p) {
  const glm::dvec4 clip = clip_from_view(request.camera, request.size, bounds) *
                          view_from_part(request.camera) * glm::dvec4(p, 1.0);
  return {(0.5 + 0.5 * clip.x / clip.w) * request.size.width_px,
          (0.5 - 0.5 * clip.y / clip.w) * request.size.height_px};
}

/// The rim from the side on which s = 0 lies.
DrawRequest rim_request(const Outcome &outcome) {
  DrawRequest request;
  request.size = {800, 500};
  request.exaggeration = 1.0;
  request.things.marks = false;
  request.camera = camera_on(surface_points(outcome), request.size, 0.2, 0.3);
  return request;
}

} // namespace

TEST_F(Picking, TheGrooveIsFoundWithinACell) {
  const Outcome outcome = test_support::rim_outcome(0.1);
  const auto &chart = std::get<WallChart>(outcome.charts[0]);
  const DrawRequest request = rim_request(outcome);
  Renderer renderer;
  renderer.show(outcome);
  const double z_mm = 7.05;
  const Vec2 at = pixel_of(request, whole_bounds(outcome), {31.0, 0.0, z_mm});
  const Pick pick = renderer.pick(request, at.x, at.y);
  ASSERT_EQ(pick.what, Pick::What::surface);
  const double s = chart.s_mm[pick.column];
  // One cell, and half a pixel of 0.09 mm.
  constexpr double kCellAndHalfPixel_mm = 0.15;
  EXPECT_LT(std::min(s, chart.outline.length_mm() - s), kCellAndHalfPixel_mm);
  EXPECT_NEAR(chart.z_mm[pick.row], z_mm, kCellAndHalfPixel_mm);
  EXPECT_EQ(pick.cell, chart.at(pick.column, pick.row));
  EXPECT_EQ(pick.piece, 1);
  // 7.05 mm lies on the third level: 8 um less 6 um at the groove's middle.
  EXPECT_NEAR(pick.residual_mm, 0.002, 0.0008); // the groove rises by 0.7 um within a cell of its middle
}

TEST_F(Picking, OnTheStripTheSameColumnIsUnderItsPlace) {
  const Outcome outcome = test_support::rim_outcome(0.1);
  const auto &chart = std::get<WallChart>(outcome.charts[0]);
  DrawRequest request = strip_request(outcome, {900, 200}, Colouring::lamp);
  request.sheet = zoomed(request.sheet, 0.1, 450, 100, request.size); // 0.023 mm a pixel
  Renderer renderer;
  renderer.show(outcome);
  for (std::size_t column : {std::size_t{3}, std::size_t{40}, chart.columns() - 5}) {
    const Vec2 place = strip_place_mm(outcome, 0, {chart.foot[column], 7.0});
    request.sheet.centre_mm = place;
    const Pick pick = renderer.pick(request, 450, 100);
    ASSERT_EQ(pick.what, Pick::What::surface);
    EXPECT_EQ(pick.column, column);
    EXPECT_NEAR(chart.z_mm[pick.row], 7.0, 0.051); // half a cell
  }
}

TEST_F(Picking, AnInsideWallRunsToTheLeftAndIsPickedAllTheSame) {
  Outcome outcome = test_support::rim_outcome(0.1);
  auto &chart = std::get<WallChart>(outcome.charts[0]);
  chart.inside = true;
  for (Vec2 &normal : chart.normal)
    normal = -normal;
  DrawRequest request = strip_request(outcome, {900, 200}, Colouring::lamp);
  Renderer renderer;
  renderer.show(outcome);
  const Vec2 at_100 = strip_place_mm(outcome, 0, {chart.foot[100], 7.0});
  const Vec2 at_200 = strip_place_mm(outcome, 0, {chart.foot[200], 7.0});
  EXPECT_GT(at_100.x, at_200.x);
  request.sheet = zoomed(request.sheet, 0.1, 450, 100, request.size);
  request.sheet.centre_mm = at_100;
  EXPECT_EQ(renderer.pick(request, 450, 100).column, 100u);
}

TEST_F(Picking, PathIsFoundBesideItsLineAndSurfaceElsewhere) {
  const Outcome outcome = floor_outcome(20, 15, 0.1, [](double, double) { return 0.0; });
  DrawRequest request;
  request.size = {600, 450};
  request.things.marks = request.things.holding = false;
  request.things.path = true;
  request.camera = camera_on(surface_points(outcome), request.size, 0.3, 1.2);
  Renderer renderer;
  renderer.show(outcome);
  const Vec2 on_path = pixel_of(request, whole_bounds(outcome), {8.0, 7.5, 2.0});
  const Pick path = renderer.pick(request, on_path.x, on_path.y + 3.0);
  ASSERT_EQ(path.what, Pick::What::path);
  EXPECT_EQ(path.piece, 0);
  const Pick surface = renderer.pick(request, on_path.x, on_path.y + 40.0);
  EXPECT_EQ(surface.what, Pick::What::surface);
  EXPECT_EQ(renderer.pick(request, 2.0, 2.0).what, Pick::What::nothing);
}

TEST_F(Picking, AFindingWinsAndOneOnTheFarSideIsNotInTheWay) {
  const Outcome outcome = test_support::rim_outcome(0.2); // witness at +x, lip at +y
  DrawRequest request = rim_request(outcome);
  request.things.marks = true;
  Renderer renderer;
  renderer.show(outcome);
  const OffscreenPicture picture = offscreen_picture(renderer, request, 1);
  const auto mark_of = [&](FindingKind kind) -> const PlacedMark * {
    for (const PlacedMark &mark : picture.drawn.marks)
      if (outcome.findings[mark.finding].kind == kind)
        return &mark;
    return nullptr;
  };
  const PlacedMark *witness = mark_of(FindingKind::witness_line);
  ASSERT_NE(witness, nullptr);
  EXPECT_FALSE(witness->is_hidden);
  const Pick pick = renderer.pick(request, witness->x_px, witness->y_px);
  EXPECT_EQ(pick.what, Pick::What::finding);
  EXPECT_EQ(pick.finding, static_cast<int>(witness->finding));
  request.camera.azimuth_rad = 3.0; // from the other side
  const OffscreenPicture behind = offscreen_picture(renderer, request, 1);
  for (const PlacedMark &mark : behind.drawn.marks)
    if (outcome.findings[mark.finding].kind == FindingKind::witness_line) {
      EXPECT_TRUE(mark.is_hidden);
      EXPECT_NE(renderer.pick(request, mark.x_px, mark.y_px).what, Pick::What::finding);
    }
}

TEST_F(Picking, LeavesTheBoundFramebufferAndViewportAlone) {
  const Outcome outcome = test_support::rim_outcome(0.2);
  const DrawRequest request = rim_request(outcome);
  Renderer renderer;
  renderer.show(outcome);
  const OffscreenPicture before = offscreen_picture(renderer, request, 1);
  renderer.pick(request, 400, 250);
  const OffscreenPicture after = offscreen_picture(renderer, request, 1);
  EXPECT_EQ(before.image.pixels, after.image.pixels);
}

} // namespace asperity
