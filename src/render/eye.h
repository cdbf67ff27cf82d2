// The eye and the lamp of one drawing, as every shader needs them.
#pragma once

#include "asperity/render/draw_request.h"
#include "shader_library.h"

namespace asperity {

struct Eye {
  glm::dmat4 clip_from_world{1.0};
  PictureSize size;
  double px_scale = 1.0;
  bool is_flat = false; ///< strip or section
  bool is_near = false; ///< perspective
  Vec3 place_mm{0.0};
  Vec3 towards_eye{0, 0, 1};
  Vec3 towards_lamp{0, 0, 1};
  Lamp lamp;

  /// From the upper left corner; nothing in front of the eye: far outside the picture.
  Vec2 pixel_of(Vec3 place_mm) const;
  void light(const ShaderProgram &program) const;
};

/// Everything that may be seen lies in `bounds` (space), at most farthest_mm off the sheet (flat).
Eye eye_of(const DrawRequest &request, const Bounds &bounds, double farthest_mm);

} // namespace asperity
