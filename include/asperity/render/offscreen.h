// Pictures without a window: an OpenGL context of its own, and a framebuffer read back into memory.
#pragma once

#include "asperity/picture/image.h"
#include "asperity/render/renderer.h"

#include <memory>
#include <string>

namespace asperity {

/// A context without a display, current on the thread that made it.
class OffscreenContext {
public:
  /// On failure nothing, and `fault` says what is missing and what to do.
  static std::unique_ptr<OffscreenContext> make(std::string &fault);
  ~OffscreenContext();
  OffscreenContext(const OffscreenContext &) = delete;
  OffscreenContext &operator=(const OffscreenContext &) = delete;

  const std::string &renderer_name() const { return renderer_name_; }

private:
  OffscreenContext() = default;
  void *display_ = nullptr, *context_ = nullptr;
  std::string renderer_name_;
};

struct OffscreenPicture {
  Image image;
  Drawn drawn;       ///< places count in pixels of the image
  std::string fault; ///< empty, or why there is no image
};

/// Draws `oversampling` times as large in each direction and averages. Any current context will do.
OffscreenPicture offscreen_picture(Renderer &renderer, const DrawRequest &request, int oversampling = 2);

} // namespace asperity
