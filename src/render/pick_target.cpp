// A few pixels of whole numbers.
#include "pick_target.h"

#include <glm/gtc/matrix_transform.hpp>

#include <vector>

namespace asperity {

namespace {

constexpr int kMiddle = PickTarget::kSide_px / 2;
constexpr int kPathReach_px = 4;

Seen nearest_of(const std::vector<Seen> &pixels, std::uint32_t what, int reach_px) {
  Seen best{};
  int least = reach_px * reach_px + 1;
  for (int y = 0; y < PickTarget::kSide_px; ++y)
    for (int x = 0; x < PickTarget::kSide_px; ++x) {
      const Seen &seen = pixels[static_cast<std::size_t>(y * PickTarget::kSide_px + x)];
      const int d = (x - kMiddle) * (x - kMiddle) + (y - kMiddle) * (y - kMiddle);
      if (seen[0] == what && d < least) {
        least = d;
        best = seen;
      }
    }
  return best;
}

} // namespace

PickTarget::PickTarget() {
  GLint before = 0;
  glGetIntegerv(GL_FRAMEBUFFER_BINDING, &before);
  glBindFramebuffer(GL_FRAMEBUFFER, frame_.name());
  glBindRenderbuffer(GL_RENDERBUFFER, seen_.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA32UI, kSide_px, kSide_px);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, seen_.name());
  glBindRenderbuffer(GL_RENDERBUFFER, depth_.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, kSide_px, kSide_px);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth_.name());
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(before));
}

Seen PickTarget::look(Eye eye, double x_px, double y_px, const std::function<void(const Eye &)> &draw) const {
  GLint before = 0, viewport[4] = {};
  glGetIntegerv(GL_FRAMEBUFFER_BINDING, &before);
  glGetIntegerv(GL_VIEWPORT, viewport);

  // Only the pixel's surroundings are drawn, as large as they are in the picture.
  const double w = eye.size.width_px, h = eye.size.height_px;
  const Vec3 grow(w / kSide_px, h / kSide_px, 1.0);
  const Vec3 away(-(2.0 * x_px / w - 1.0), -(1.0 - 2.0 * y_px / h), 0.0);
  const glm::dmat4 whole(1.0);
  eye.clip_from_world = glm::scale(whole, grow) * glm::translate(whole, away) * eye.clip_from_world;
  eye.size = {kSide_px, kSide_px};

  glBindFramebuffer(GL_FRAMEBUFFER, frame_.name());
  glViewport(0, 0, kSide_px, kSide_px);
  const GLuint nothing[4] = {0, 0, 0, 0};
  glClearBufferuiv(GL_COLOR, 0, nothing);
  glClear(GL_DEPTH_BUFFER_BIT);
  glEnable(GL_DEPTH_TEST);
  draw(eye);
  glDisable(GL_DEPTH_TEST);
  std::vector<Seen> pixels(kSide_px * kSide_px);
  glReadPixels(0, 0, kSide_px, kSide_px, GL_RGBA_INTEGER, GL_UNSIGNED_INT, pixels.data());
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(before));
  glViewport(viewport[0], viewport[1], viewport[2], viewport[3]);
  expect_no_gl_error();

  const Seen path = nearest_of(pixels, kSeesPath, kPathReach_px);
  return path[0] == kSeesPath ? path : pixels[kMiddle * kSide_px + kMiddle];
}

} // namespace asperity
