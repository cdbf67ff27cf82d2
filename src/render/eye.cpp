// The eye and the lamp of one drawing.
#include "eye.h"

#include <cmath>

namespace asperity {

namespace {

Vec3 direction(double azimuth_rad, double elevation_rad) {
  const double level = std::cos(elevation_rad);
  return {level * std::cos(azimuth_rad), level * std::sin(azimuth_rad), std::sin(elevation_rad)};
}

} // namespace

Vec2 Eye::pixel_of(Vec3 place) const {
  const glm::dvec4 clip = clip_from_world * glm::dvec4(place, 1.0);
  if (clip.w <= 0.0)
    return Vec2(-1e6);
  return {(0.5 + 0.5 * clip.x / clip.w) * size.width_px, (0.5 - 0.5 * clip.y / clip.w) * size.height_px};
}

void Eye::light(const ShaderProgram &program) const {
  program.set("clip_from_world", clip_from_world);
  program.set("towards_lamp", towards_lamp);
  program.set("towards_eye", towards_eye);
  program.set("eye_place", place_mm);
  program.set("eye_is_near", is_near);
  program.set("lamp_strength", lamp.strength);
  program.set("lamp_ambient", lamp.ambient);
  program.set("lamp_highlight", lamp.highlight);
}

Eye eye_of(const DrawRequest &request, const Bounds &bounds, double farthest_mm) {
  Eye eye;
  eye.size = request.size;
  eye.px_scale = request.px_scale;
  eye.lamp = request.lamp;
  eye.is_flat = request.view != View::space;
  if (eye.is_flat) {
    eye.clip_from_world = clip_from_sheet(request.sheet, request.size, 2.0 * farthest_mm);
    eye.towards_lamp = direction(request.lamp.azimuth_rad, request.lamp.elevation_rad);
    return eye;
  }
  const Camera &camera = request.camera;
  eye.clip_from_world = clip_from_view(camera, request.size, bounds) * view_from_part(camera);
  eye.is_near = camera.is_perspective;
  eye.place_mm = camera.eye_mm();
  eye.towards_eye = camera.towards_eye();
  const double turn = request.lamp.turns_with_eye ? camera.azimuth_rad : 0.0;
  eye.towards_lamp = direction(request.lamp.azimuth_rad + turn, request.lamp.elevation_rad);
  return eye;
}

} // namespace asperity
