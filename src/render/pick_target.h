// A few pixels of whole numbers: what lies under and round a pixel.
#pragma once

#include "eye.h"
#include "gl_object.h"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>

namespace asperity {

/// As the pick shaders write it: 0 nothing, 1 surface (feature, column, row), 2 path (piece).
using Seen = std::array<std::uint32_t, 4>;
inline constexpr std::uint32_t kSeesSurface = 1, kSeesPath = 2;

class PickTarget {
public:
  static constexpr int kSide_px = 9;

  PickTarget();
  /// Draws the surroundings of a pixel with `draw`, and gives the nearest path within its reach, else what is
  /// at the pixel itself. The bound framebuffer and viewport are put back.
  Seen look(Eye eye, double x_px, double y_px, const std::function<void(const Eye &)> &draw) const;

private:
  Framebuffer frame_;
  Renderbuffer seen_, depth_;
};

} // namespace asperity
