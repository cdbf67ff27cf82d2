// A cutter's lower surface over plan distance, with its slope and bend, laid out for inner loops.
#pragma once

#include "floor_block.h"

#include "asperity/shape/cutter_profile.h"

#include <algorithm>
#include <cmath>

namespace asperity {

/// Convex and rising: flat to `flat`, arc of `corner` to `join`, cone of slope `lean` to `reach` [mm].
struct Flank {
  double reach, flat, corner, join, join_height, lean;
  bool is_nearly_ball; ///< short forms hold for it: a ball, maybe grown or worn a little

  explicit Flank(const CutterProfile &p)
      : reach(p.radius_mm()), flat(p.tip_flat_mm()), corner(p.corner_mm()), join(p.radius_mm()),
        join_height(0.0), lean(0.0), is_nearly_ball(false) {
    if (p.cone_half_angle_rad() > 0.0) {
      join = std::min(reach, flat + corner * std::cos(p.cone_half_angle_rad()));
      lean = 1.0 / std::tan(p.cone_half_angle_rad());
    }
    join_height = corner > 0.0 ? p.height_at(std::max(join, 0.0)) : 0.0;
    is_nearly_ball = is_round() && has_grown_form(corner, flat);
  }

  bool is_ball() const { return flat == 0.0 && corner == reach && lean == 0.0; }
  /// Nothing but flat and arc: a ball, grown or worn too, or a corner-radius cutter.
  bool is_round() const { return corner > 0.0 && !has_cone(); }
  bool is_disc() const { return corner == 0.0 && lean == 0.0; }
  bool has_cone() const { return join < reach; }

  /// Height above the tip, 0 <= d <= reach.
  double height(double d) const {
    if (d <= flat)
      return 0.0;
    if (d > join)
      return join_height + (d - join) * lean;
    const double x = std::min(d - flat, corner);
    return x * x / (corner + std::sqrt((corner - x) * (corner + x)));
  }
  /// dh/dd; very large where the arc stands upright.
  double slope(double d) const {
    if (d <= flat)
      return 0.0;
    return d > join ? lean : (d - flat) / upright(d);
  }
  /// d2h/dd2.
  double bend(double d) const {
    if (d <= flat || d > join)
      return 0.0;
    const double w = upright(d);
    return corner * corner / (w * w * w);
  }

  /// Farthest from a cell's foot on a path of slope m (>= 0) that the lowest contact can lie: there
  /// slope(d) tau / d = m with tau <= d, and d / slope(d) falls with d on the arc and stays on the cone
  /// (derived).
  double farthest_shift(double m) const {
    if (m == 0.0)
      return 0.0;
    if (is_disc() || (has_cone() && m >= lean))
      return reach;
    const double contact = std::max(0.0, flat + corner * m / std::sqrt(1.0 + m * m));
    const double sharp = flat < 0.0 ? m * corner : 0.0;
    const double cone = has_cone() ? reach * m / lean : 0.0;
    return std::min(reach, std::max({contact, sharp, cone}));
  }

private:
  double upright(double d) const {
    const double x = d - flat;
    return std::sqrt(std::max((corner - x) * (corner + x), 1e-30));
  }
};

} // namespace asperity
