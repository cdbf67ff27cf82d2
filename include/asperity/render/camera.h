// Where a picture is seen from: an eye in space, or a flat sheet seen square on.
#pragma once

#include "asperity/base/units.h"
#include "asperity/base/vec.h"

#include <glm/mat4x4.hpp>

#include <limits>
#include <span>

namespace asperity {

/// Of the picture, in device pixels.
struct PictureSize {
  int width_px = 1200, height_px = 900;
  double aspect() const { return height_px > 0 ? static_cast<double>(width_px) / height_px : 1.0; }
};

/// A box in the part frame [mm]; empty until something is put in.
struct Bounds {
  Vec3 low{std::numeric_limits<double>::infinity()};
  Vec3 high{-std::numeric_limits<double>::infinity()};

  bool is_empty() const { return !(low.x <= high.x); }
  void hold(Vec3 p);
  Vec3 middle() const { return 0.5 * (low + high); }
  double radius_mm() const { return is_empty() ? 1.0 : 0.5 * glm::length(high - low); }
};

/// An eye that looks at `target`. It stands in the plan direction `azimuth` from the target (0 = +x, counter-
/// clockwise seen from above), `elevation` above the level; z stays up in the picture.
struct Camera {
  Vec3 target_mm{0.0};
  double azimuth_rad = rad_from_deg(-60.0);
  double elevation_rad = rad_from_deg(30.0);
  double height_mm = 100.0; ///< height of what is seen in the plane through the target
  bool is_perspective = true;
  double opening_rad = rad_from_deg(28.0); ///< perspective: opening angle, bottom to top

  Vec3 eye_mm() const;
  /// From the target to the eye, unit length.
  Vec3 towards_eye() const;
  Vec3 right() const;
  Vec3 up() const;
  double distance_mm() const;
};

/// The whole of `bounds` in the picture, with a margin.
Camera camera_on(const Bounds &bounds, PictureSize size, double azimuth_rad, double elevation_rad);
/// Tighter: all of these points.
Camera camera_on(std::span<const Vec3> points_mm, PictureSize size, double azimuth_rad, double elevation_rad);

/// Elevation is kept within +-89.9 degrees.
Camera turned(Camera camera, double azimuth_rad, double elevation_rad);
/// Moves what is seen by so many pixels: right and down positive.
Camera moved(Camera camera, double right_px, double down_px, PictureSize size);
/// factor < 1 comes closer. What lies under the pixel stays there.
Camera zoomed(Camera camera, double factor, double x_px, double y_px, PictureSize size);

glm::dmat4 view_from_part(const Camera &camera);
/// Near and far planes are laid round `bounds`.
glm::dmat4 clip_from_view(const Camera &camera, PictureSize size, const Bounds &bounds);

/// A flat sheet (unrolled wall, section) seen square on: across and up in mm.
struct SheetView {
  Vec2 centre_mm{0.0};
  double mm_per_px = 0.1;  ///< across
  double up_stretch = 1.0; ///< drawn so many times taller than wide
  double across_stretch = 1.0;

  double across_mm_per_px() const { return mm_per_px / across_stretch; }
  double up_mm_per_px() const { return mm_per_px / up_stretch; }
  /// Sheet coordinates of a pixel; x to the right, y down from the upper left corner.
  Vec2 place_mm(double x_px, double y_px, PictureSize size) const;
  Vec2 pixel(Vec2 place_mm, PictureSize size) const;
};

/// The whole of low..high in the picture, with a margin.
SheetView sheet_on(Vec2 low_mm, Vec2 high_mm, PictureSize size, double up_stretch = 1.0,
                   double across_stretch = 1.0);
SheetView moved(SheetView view, double right_px, double down_px);
/// factor < 1 comes closer. What lies under the pixel stays there.
SheetView zoomed(SheetView view, double factor, double x_px, double y_px, PictureSize size);

glm::dmat4 clip_from_sheet(const SheetView &view, PictureSize size, double deepest_mm);

} // namespace asperity
