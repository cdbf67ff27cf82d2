// Pictures kept for comparison: read, compared within stated bounds, or written anew when asked to.
#pragma once

#include "asperity/picture/image.h"

#include <string>

namespace asperity::render_test {

/// How far a picture may be from the kept one. Two drivers round edges and texture filters differently:
/// measured between a processor's and a graphics card's rendering of one scene, 1.8 % of the pixels differ by
/// over 2 %.
struct GoldenBounds {
  double mean = 1.5;        ///< of 255, over all channels
  int far = 24;             ///< of 255: a pixel beyond this in any channel counts as different
  double far_share = 0.015; ///< of the pixels may be
};

/// Empty, or in words how the picture differs from golden/<name>.png. With the environment variable
/// ASPERITY_GOLDEN_OUT set to a folder, <name>.png and <name>-sheet.png (old, new, difference) are written
/// there.
std::string compared_with_golden(const std::string &name, const Image &image,
                                 const GoldenBounds &bounds = {});

} // namespace asperity::render_test
