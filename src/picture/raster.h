// A chart brought to the picture's pixels: residual and kind of surface at each.
#pragma once

#include "plane.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace asperity {

/// What a pixel shows. lip: stock that stands from the wall's foot up; skin: the blank is too small there.
enum class Surface : std::uint8_t { outside, cut, standing, lip, skin };

/// Rows from the top down, as in the picture.
struct Raster {
  int width = 0, height = 0;
  double x_mm_per_px = 0, y_mm_per_px = 0;
  std::vector<float> residual_um; ///< where the surface is cut
  std::vector<Surface> surface;

  std::size_t at(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  }
  bool is_cut(int x, int y) const {
    return x >= 0 && y >= 0 && x < width && y < height && surface[at(x, y)] == Surface::cut;
  }
  bool has(Surface kind) const;
};

/// Cells are blended with a tent as wide as a pixel or as the cells' spacing, whichever is wider: no narrow
/// mark is lost between pixels and no step is drawn that the chart does not have. Cells of different kinds
/// are not blended.
Raster rasterise(const Chart &chart, const Plane &plane, int width_px, int height_px);

} // namespace asperity
