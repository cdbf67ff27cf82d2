// A picture drawn larger than asked, read back and averaged.
#include "asperity/render/offscreen.h"

#include "gl_object.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

struct Target {
  Framebuffer frame;
  Renderbuffer colour, depth;
};

bool bind(const Target &target, PictureSize size) {
  glBindFramebuffer(GL_FRAMEBUFFER, target.frame.name());
  glBindRenderbuffer(GL_RENDERBUFFER, target.colour.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA8, size.width_px, size.height_px);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, target.colour.name());
  glBindRenderbuffer(GL_RENDERBUFFER, target.depth.name());
  glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, size.width_px, size.height_px);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, target.depth.name());
  return glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

/// Mean of times x times pixels; OpenGL's rows run upwards, a picture's down.
Image averaged(const std::vector<std::uint8_t> &pixels, PictureSize size, int times) {
  Image image(size.width_px, size.height_px, {});
  const auto row = static_cast<std::size_t>(size.width_px * times) * 4;
  const auto n = static_cast<unsigned>(times * times);
  for (int y = 0; y < size.height_px; ++y)
    for (int x = 0; x < size.width_px; ++x) {
      unsigned sum[3] = {n / 2, n / 2, n / 2};
      for (int b = 0; b < times; ++b)
        for (int a = 0; a < times; ++a) {
          const std::uint8_t *p =
              &pixels[static_cast<std::size_t>((size.height_px - 1 - y) * times + b) * row +
                      static_cast<std::size_t>(x * times + a) * 4];
          for (int c = 0; c < 3; ++c)
            sum[c] += p[c];
        }
      image.at(x, y) = {static_cast<std::uint8_t>(sum[0] / n), static_cast<std::uint8_t>(sum[1] / n),
                        static_cast<std::uint8_t>(sum[2] / n)};
    }
  return image;
}

DrawRequest larger(DrawRequest request, int times) {
  request.size = {request.size.width_px * times, request.size.height_px * times};
  request.px_scale *= times;
  request.sheet.mm_per_px /= times;
  return request;
}

} // namespace

OffscreenPicture offscreen_picture(Renderer &renderer, const DrawRequest &request, int oversampling) {
  OffscreenPicture picture;
  picture.fault = renderer.fault();
  if (!picture.fault.empty())
    return picture;
  GLint largest = 0, before = 0;
  glGetIntegerv(GL_MAX_RENDERBUFFER_SIZE, &largest);
  const int longest = std::max(request.size.width_px, request.size.height_px);
  if (std::min(request.size.width_px, request.size.height_px) < 1 || longest > largest) {
    picture.fault = fmt::format("a picture of {} x {} pixels cannot be drawn here: choose 1 to {} each way",
                                request.size.width_px, request.size.height_px, largest);
    return picture;
  }
  const int times = std::clamp(oversampling, 1, largest / longest);
  const DrawRequest asked = larger(request, times);
  glGetIntegerv(GL_FRAMEBUFFER_BINDING, &before);
  const Target target;
  if (!bind(target, asked.size)) {
    picture.fault = "the graphics memory does not hold so large a picture: choose a smaller size";
  } else {
    picture.drawn = renderer.draw(asked);
    std::vector<std::uint8_t> pixels(static_cast<std::size_t>(asked.size.width_px) *
                                     static_cast<std::size_t>(asked.size.height_px) * 4);
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, asked.size.width_px, asked.size.height_px, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
    expect_no_gl_error();
    picture.image = averaged(pixels, request.size, times);
  }
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(before));
  for (PlacedMark &mark : picture.drawn.marks) {
    mark.x_px /= times;
    mark.y_px /= times;
    mark.radius_px /= times;
  }
  return picture;
}

} // namespace asperity
