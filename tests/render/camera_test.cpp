// Cameras: plane geometry of what is seen where.
#include "asperity/render/camera.h"

#include <glm/vec4.hpp>
#include <gtest/gtest.h>

#include <vector>

namespace asperity {

namespace {

constexpr double kRounding_px = 1e-6; ///< double precision over pictures of a few hundred pixels

constexpr PictureSize kSize{640, 480};

Vec2 pixel_of(const Camera &camera, Vec3 p) {
  Bounds bounds;
  bounds.hold(Vec3(-100.0));
  bounds.hold(Vec3(100.0));
  const glm::dvec4 clip = clip_from_view(camera, kSize, bounds) * view_from_part(camera) * glm::dvec4(p, 1.0);
  return {(0.5 + 0.5 * clip.x / clip.w) * kSize.width_px, (0.5 - 0.5 * clip.y / clip.w) * kSize.height_px};
}

Camera some_camera(bool is_perspective) {
  Camera camera;
  camera.target_mm = {3.0, -2.0, 5.0};
  camera.azimuth_rad = 0.7;
  camera.elevation_rad = 0.4;
  camera.height_mm = 60.0;
  camera.is_perspective = is_perspective;
  return camera;
}

} // namespace

TEST(Camera, TheTargetIsInTheMiddleAndHeightReachesFromEdgeToEdge) {
  for (bool is_perspective : {false, true}) {
    const Camera camera = some_camera(is_perspective);
    const Vec2 middle = pixel_of(camera, camera.target_mm);
    EXPECT_NEAR(middle.x, 320.0, kRounding_px);
    EXPECT_NEAR(middle.y, 240.0, kRounding_px);
    EXPECT_NEAR(pixel_of(camera, camera.target_mm + 30.0 * camera.up()).y, 0.0, kRounding_px);
    // A pixel is as wide as it is high.
    EXPECT_NEAR(pixel_of(camera, camera.target_mm + 30.0 * camera.right()).x, 320.0 + 240.0, kRounding_px);
  }
}

TEST(Camera, FromTheEastNorthIsOnTheRight) {
  Camera camera = some_camera(true);
  camera.azimuth_rad = 0.0; // the eye stands at +x and looks towards -x
  EXPECT_GT(pixel_of(camera, camera.target_mm + Vec3(0.0, 1.0, 0.0)).x, 320.0);
  EXPECT_LT(pixel_of(camera, camera.target_mm + Vec3(0.0, 0.0, 1.0)).y, 240.0);
}

TEST(Camera, WhatLiesUnderThePixelStaysThereWhenComingCloser) {
  for (bool is_perspective : {false, true}) {
    const Camera before = some_camera(is_perspective);
    const Vec3 p = before.target_mm + 8.0 * before.right() - 5.0 * before.up();
    const Vec2 at = pixel_of(before, p);
    const Vec2 after = pixel_of(zoomed(before, 0.5, at.x, at.y, kSize), p);
    EXPECT_NEAR(after.x, at.x, kRounding_px);
    EXPECT_NEAR(after.y, at.y, kRounding_px);
  }
}

TEST(Camera, MovingCarriesTheTargetWithThePointer) {
  const Camera before = some_camera(true);
  const Vec2 after = pixel_of(moved(before, 40.0, -25.0, kSize), before.target_mm);
  EXPECT_NEAR(after.x, 320.0 + 40.0, kRounding_px);
  EXPECT_NEAR(after.y, 240.0 - 25.0, kRounding_px);
}

TEST(Camera, FramingHoldsEveryPointAndFillsThePicture) {
  const std::vector<Vec3> points = {{-31, -31, 0}, {31, -31, 0}, {31, 31, 14}, {-31, 31, 14}, {0, 0, 22}};
  for (double azimuth : {0.0, 1.0, 2.5, -2.0}) {
    const Camera camera = camera_on(points, kSize, azimuth, 0.5);
    Vec2 low(1e9), high(-1e9);
    for (Vec3 p : points) {
      low = glm::min(low, pixel_of(camera, p));
      high = glm::max(high, pixel_of(camera, p));
    }
    EXPECT_GE(low.x, 0.0);
    EXPECT_GE(low.y, 0.0);
    EXPECT_LE(high.x, 640.0);
    EXPECT_LE(high.y, 480.0);
    EXPECT_GT(std::max((high.x - low.x) / 640.0, (high.y - low.y) / 480.0), 0.85);
  }
}

TEST(SheetView, PlaceAndPixelAreEachOthersInverse) {
  SheetView view{.centre_mm = {97.0, 7.0}, .mm_per_px = 0.16, .up_stretch = 4.0};
  const Vec2 place = view.place_mm(100.0, 33.0, kSize);
  EXPECT_NEAR(view.pixel(place, kSize).x, 100.0, kRounding_px);
  EXPECT_NEAR(view.pixel(place, kSize).y, 33.0, kRounding_px);
  EXPECT_NEAR(place.x, 97.0 - 220.0 * 0.16, 1e-12);
  EXPECT_NEAR(place.y, 7.0 + 207.0 * 0.04, 1e-12); // four times taller: a quarter of the mm in a pixel
  const SheetView closer = zoomed(view, 0.25, 100.0, 33.0, kSize);
  EXPECT_NEAR(closer.place_mm(100.0, 33.0, kSize).x, place.x, 1e-12);
  EXPECT_NEAR(closer.place_mm(100.0, 33.0, kSize).y, place.y, 1e-12);
}

} // namespace asperity
