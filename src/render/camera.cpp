// Where a picture is seen from.
#include "asperity/render/camera.h"

#include <glm/gtc/matrix_transform.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace asperity {

namespace {

constexpr double kMargin = 1.1; ///< room round what is framed
constexpr double kSteepest_rad = rad_from_deg(89.9);

} // namespace

void Bounds::hold(Vec3 p) {
  low = glm::min(low, p);
  high = glm::max(high, p);
}

Vec3 Camera::towards_eye() const {
  const double level = std::cos(elevation_rad);
  return {level * std::cos(azimuth_rad), level * std::sin(azimuth_rad), std::sin(elevation_rad)};
}

double Camera::distance_mm() const { return 0.5 * height_mm / std::tan(0.5 * opening_rad); }

Vec3 Camera::eye_mm() const { return target_mm + distance_mm() * towards_eye(); }

Vec3 Camera::right() const { return {-std::sin(azimuth_rad), std::cos(azimuth_rad), 0.0}; }

Vec3 Camera::up() const { return glm::cross(towards_eye(), right()); }

Camera camera_on(const Bounds &bounds, PictureSize size, double azimuth_rad, double elevation_rad) {
  std::vector<Vec3> corners;
  for (int corner = 0; corner < 8 && !bounds.is_empty(); ++corner)
    corners.emplace_back((corner & 1) ? bounds.high.x : bounds.low.x,
                         (corner & 2) ? bounds.high.y : bounds.low.y,
                         (corner & 4) ? bounds.high.z : bounds.low.z);
  return camera_on(corners, size, azimuth_rad, elevation_rad);
}

Camera camera_on(std::span<const Vec3> points_mm, PictureSize size, double azimuth_rad,
                 double elevation_rad) {
  Camera camera;
  camera.azimuth_rad = azimuth_rad;
  camera.elevation_rad = std::clamp(elevation_rad, -kSteepest_rad, kSteepest_rad);
  if (points_mm.empty())
    return camera;
  Bounds bounds;
  for (Vec3 p : points_mm)
    bounds.hold(p);
  camera.target_mm = bounds.middle();
  camera.height_mm = 4.0 * bounds.radius_mm();
  // A perspective eye sees near points larger, so what fills the picture is found in a few rounds.
  constexpr int kRounds = 8;
  for (int round = 0; round < kRounds; ++round) {
    Vec2 low(std::numeric_limits<double>::infinity()), high(-low);
    for (Vec3 p : points_mm) {
      const Vec3 off = p - camera.target_mm;
      const double near_mm = glm::dot(off, camera.towards_eye()), distance = camera.distance_mm();
      const double larger =
          camera.is_perspective ? distance / std::max(distance - near_mm, 0.05 * distance) : 1.0;
      const Vec2 at = larger * Vec2(glm::dot(off, camera.right()), glm::dot(off, camera.up()));
      low = glm::min(low, at);
      high = glm::max(high, at);
    }
    const Vec2 middle = 0.5 * (low + high), extent = high - low;
    camera.target_mm += middle.x * camera.right() + middle.y * camera.up();
    camera.height_mm = std::max(kMargin * std::max(extent.y, extent.x / size.aspect()), 1e-3);
  }
  return camera;
}

Camera turned(Camera camera, double azimuth_rad, double elevation_rad) {
  camera.azimuth_rad = std::remainder(camera.azimuth_rad + azimuth_rad, 2.0 * kPi);
  camera.elevation_rad = std::clamp(camera.elevation_rad + elevation_rad, -kSteepest_rad, kSteepest_rad);
  return camera;
}

Camera moved(Camera camera, double right_px, double down_px, PictureSize size) {
  const double mm_per_px = camera.height_mm / std::max(size.height_px, 1);
  camera.target_mm += mm_per_px * (-right_px * camera.right() + down_px * camera.up());
  return camera;
}

Camera zoomed(Camera camera, double factor, double x_px, double y_px, PictureSize size) {
  const double mm_per_px = camera.height_mm / std::max(size.height_px, 1);
  const Vec3 under = mm_per_px * ((x_px - 0.5 * size.width_px) * camera.right() -
                                  (y_px - 0.5 * size.height_px) * camera.up());
  camera.target_mm += (1.0 - factor) * under;
  camera.height_mm = std::clamp(camera.height_mm * factor, 1e-3, 1e5);
  return camera;
}

glm::dmat4 view_from_part(const Camera &camera) {
  return glm::lookAt(camera.eye_mm(), camera.target_mm, camera.up());
}

glm::dmat4 clip_from_view(const Camera &camera, PictureSize size, const Bounds &bounds) {
  const double reach = bounds.is_empty() ? camera.height_mm : bounds.radius_mm();
  const double distance = camera.distance_mm();
  const double middle =
      bounds.is_empty() ? distance : glm::dot(camera.eye_mm() - bounds.middle(), camera.towards_eye());
  const double far_mm = std::max(middle + 1.05 * reach, 1e-2 * distance);
  const double half = 0.5 * camera.height_mm;
  if (!camera.is_perspective)
    return glm::ortho(-half * size.aspect(), half * size.aspect(), -half, half, middle - 1.05 * reach,
                      far_mm);
  const double near_mm = std::max({middle - 1.05 * reach, 0.02 * distance, 1e-3 * far_mm});
  return glm::perspective(camera.opening_rad, size.aspect(), near_mm, std::max(far_mm, 1.01 * near_mm));
}

Vec2 SheetView::place_mm(double x_px, double y_px, PictureSize size) const {
  return centre_mm + Vec2((x_px - 0.5 * size.width_px) * across_mm_per_px(),
                          (0.5 * size.height_px - y_px) * up_mm_per_px());
}

Vec2 SheetView::pixel(Vec2 place_mm, PictureSize size) const {
  const Vec2 off = place_mm - centre_mm;
  return {0.5 * size.width_px + off.x / across_mm_per_px(), 0.5 * size.height_px - off.y / up_mm_per_px()};
}

SheetView sheet_on(Vec2 low_mm, Vec2 high_mm, PictureSize size, double up_stretch, double across_stretch) {
  SheetView view;
  view.centre_mm = 0.5 * (low_mm + high_mm);
  view.up_stretch = up_stretch;
  view.across_stretch = across_stretch;
  const Vec2 extent = glm::max(high_mm - low_mm, Vec2(1e-6));
  view.mm_per_px = kMargin * std::max(extent.x * across_stretch / std::max(size.width_px, 1),
                                      extent.y * up_stretch / std::max(size.height_px, 1));
  return view;
}

SheetView moved(SheetView view, double right_px, double down_px) {
  view.centre_mm += Vec2(-right_px * view.across_mm_per_px(), down_px * view.up_mm_per_px());
  return view;
}

SheetView zoomed(SheetView view, double factor, double x_px, double y_px, PictureSize size) {
  const Vec2 under = view.place_mm(x_px, y_px, size);
  view.centre_mm = under + factor * (view.centre_mm - under);
  view.mm_per_px *= factor;
  return view;
}

glm::dmat4 clip_from_sheet(const SheetView &view, PictureSize size, double deepest_mm) {
  const Vec2 half(0.5 * size.width_px * view.across_mm_per_px(), 0.5 * size.height_px * view.up_mm_per_px());
  const double deep = std::max(deepest_mm, 1e-3);
  // Looking down on the sheet: height above it towards the eye.
  return glm::ortho(view.centre_mm.x - half.x, view.centre_mm.x + half.x, view.centre_mm.y - half.y,
                    view.centre_mm.y + half.y, -deep, deep);
}

} // namespace asperity
