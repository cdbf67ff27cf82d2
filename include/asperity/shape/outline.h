// A closed plan outline of lines and arcs, run counter-clockwise round the material it bounds.
#pragma once

#include "asperity/base/vec.h"

#include <string>
#include <vector>

namespace asperity {

/// One line or arc. For a line sweep_rad is 0 and centre unused. Arc: sweep_rad > 0 counter-clockwise.
struct OutlineElement {
  Vec2 begin{0.0};
  Vec2 end{0.0};
  Vec2 centre{0.0};
  double sweep_rad = 0.0;

  bool is_arc() const { return sweep_rad != 0.0; }
  double radius_mm() const;
  double length_mm() const;
  /// Point, unit tangent at arc length s from begin [mm], 0 <= s <= length_mm().
  Vec2 point(double s_mm) const;
  Vec2 tangent(double s_mm) const;
  /// Shortest distance from p to the element [mm] and the arc length of the foot.
  double distance_mm(Vec2 p, double *foot_s_mm = nullptr) const;
};

/// Closed, not self-crossing, counter-clockwise (area_mm2() > 0).
class Outline {
public:
  Outline() = default;
  /// Elements in order, each beginning where the one before ends. Turned round if they run clockwise.
  explicit Outline(std::vector<OutlineElement> elements);

  static Outline circle(Vec2 centre, double diameter_mm);
  /// Axis-parallel, corners rounded by corner_radius_mm (0 = sharp).
  static Outline rounded_rectangle(Vec2 centre, double width_mm, double height_mm, double corner_radius_mm);

  const std::vector<OutlineElement> &elements() const { return elements_; }
  double length_mm() const { return length_mm_; }
  double area_mm2() const;
  /// Arc length at which element i begins [mm].
  double element_start_mm(std::size_t i) const { return starts_[i]; }
  std::size_t element_at(double s_mm) const;
  /// Point and unit outward normal (to the right of the tangent) at arc length s, wrapped round.
  Vec2 point(double s_mm) const;
  Vec2 outward_normal(double s_mm) const;
  /// Signed distance [mm], positive inside.
  double depth_mm(Vec2 p) const;
  bool contains(Vec2 p) const { return depth_mm(p) >= 0.0; }
  Vec2 low() const { return low_; }
  Vec2 high() const { return high_; }
  /// Empty when usable, else what is wrong: a gap, a zero-length element, a crossing.
  std::string fault() const;

private:
  std::vector<OutlineElement> elements_;
  std::vector<double> starts_;
  double length_mm_ = 0.0;
  Vec2 low_{0.0}, high_{0.0};
};

} // namespace asperity
