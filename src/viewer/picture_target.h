// A picture on the graphics card that can be drawn into and shown.
#pragma once

#include "asperity/render/camera.h"

#include <cstdint>

namespace asperity {

class PictureTarget {
public:
  PictureTarget() = default;
  ~PictureTarget();
  PictureTarget(const PictureTarget &) = delete;
  PictureTarget &operator=(const PictureTarget &) = delete;

  /// Bound for drawing, `size` large. False where the card does not hold it.
  bool bind(PictureSize size);
  std::uint32_t texture() const { return colour_; }

private:
  std::uint32_t frame_ = 0, colour_ = 0, depth_ = 0;
  PictureSize size_{0, 0};
};

} // namespace asperity
