// The path of a point: a straight line, or an arc in any plane with a steady rise along its axis (helix).
#pragma once

#include "asperity/base/vec.h"

namespace asperity {

/// u runs 0..1 at steady speed along the curve. Line: centre/axes unused, sweep_rad = 0.
/// Arc: P(u) = centre + radius (cos a · axis_x + sin a · axis_y) + u · rise, a = start_rad + u · sweep_rad,
/// where axis_x, axis_y are unit vectors of the arc's plane. For a plan arc axis_x = +x, axis_y = +y, rise =
/// (0,0,dz).
struct Curve {
  Vec3 begin{0.0};
  Vec3 end{0.0};
  Vec3 centre{0.0};
  Vec3 axis_x{1, 0, 0};
  Vec3 axis_y{0, 1, 0};
  Vec3 rise{0.0};
  double radius_mm = 0.0;
  double start_rad = 0.0;
  double sweep_rad = 0.0;

  bool operator==(const Curve &) const = default;
  static Curve line(Vec3 begin, Vec3 end);
  /// Plan arc (or helix) round centre_xy from begin to end, sweep > 0 counter-clockwise seen from above.
  static Curve plan_arc(Vec3 begin, Vec3 end, Vec2 centre_xy, double sweep_rad);

  bool is_line() const { return sweep_rad == 0.0; }
  /// True for an arc whose plane is XY (G17): its plan view is an exact circle.
  bool is_plan_arc() const { return sweep_rad != 0.0 && axis_x.z == 0.0 && axis_y.z == 0.0; }
  double length_mm() const;
  Vec3 point(double u) const;
  /// dP/du [mm].
  Vec3 velocity(double u) const;
  /// The portion [u0, u1] as a curve of its own.
  Curve portion(double u0, double u1) const;
  /// The same where its ends are known.
  Curve portion(double u0, double u1, Vec3 part_begin, Vec3 part_end) const;
  Curve moved_by(Vec3 d) const;
};

} // namespace asperity
