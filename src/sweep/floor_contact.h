// How low one stroke leaves one cell: closed forms where they exist, safeguarded Newton steps else.
#pragma once

#include "corner_on_line.h"
#include "floor_flank.h"
#include "floor_stroke.h"

namespace asperity {

/// Least of z + height over a stroke, as a function of the cell's place; +infinity where it does not reach.
/// One struct for each closed form; all are convex in the place along a line, so clamping to the ends is
/// exact.

/// Ball on any line [derived: lower envelope of spheres along a line].
struct BallOnLine {
  double x, y, tx, ty, length, z_centre, slope, reach2, lag;
  BallOnLine(const FloorStroke &s, const Flank &f)
      : x(s.low.x), y(s.low.y), tx(s.low_along.x), ty(s.low_along.y), length(s.length_mm),
        z_centre(s.z_mm + f.reach), slope(s.slope), reach2(f.reach * f.reach),
        lag(s.slope / std::sqrt(1.0 + s.slope * s.slope)) {}
  double operator()(double px, double py) const {
    const double dx = px - x, dy = py - y;
    const double along = dx * tx + dy * ty, across = dy * tx - dx * ty;
    const double w2 = reach2 - across * across;
    const double w = std::sqrt(w2 > 0.0 ? w2 : 0.0);
    double c = along - lag * w;
    c = c > 0.0 ? c : 0.0;
    c = c < length ? c : length;
    const double u2 = w2 - (c - along) * (c - along);
    const double z = z_centre + slope * c - std::sqrt(u2 > 0.0 ? u2 : 0.0);
    return u2 < 0.0 ? std::numeric_limits<double>::infinity() : z;
  }
};

/// Flat disc on any line: the lowest place at which the disc still covers the cell.
struct DiscOnLine {
  double x, y, tx, ty, length, z, slope, reach2;
  DiscOnLine(const FloorStroke &s, const Flank &f)
      : x(s.low.x), y(s.low.y), tx(s.low_along.x), ty(s.low_along.y), length(s.length_mm), z(s.z_mm),
        slope(s.slope), reach2(f.reach * f.reach) {}
  double operator()(double px, double py) const {
    const double dx = px - x, dy = py - y;
    const double along = dx * tx + dy * ty, across = dy * tx - dx * ty;
    const double w2 = reach2 - across * across;
    const double w = std::sqrt(w2 > 0.0 ? w2 : 0.0);
    const double c = along - w > 0.0 ? along - w : 0.0;
    // Zeros and infinities added up: a condition of three parts would keep loops over cells from being
    // vectors.
    constexpr double kOut = std::numeric_limits<double>::infinity();
    const double last = length < along + w ? length : along + w;
    return z + slope * c + (w2 < 0.0 ? kOut : 0.0) + (c > last ? kOut : 0.0);
  }
};

/// Flat and corner arc on any line: steps enough for every such cutter.
using RoundContact = CornerOnLine<double, 5>;
/// And for what is nearly a ball.
using GrownContact = CornerOnLine<double, 2>;

template <class Contact> struct RoundOnLine {
  double x, y, tx, ty, length, z, slope, reach2, flat, corner;
  Contact contact;
  RoundOnLine(const FloorStroke &s, const Flank &f)
      : x(s.low.x), y(s.low.y), tx(s.low_along.x), ty(s.low_along.y), length(s.length_mm), z(s.z_mm),
        slope(s.slope), reach2(f.reach * f.reach), flat(f.flat), corner(f.corner),
        contact(f.corner, f.flat, s.slope) {}
  double operator()(double px, double py) const {
    const double dx = px - x, dy = py - y;
    const double along = dx * tx + dy * ty, across = std::abs(dy * tx - dx * ty);
    const double w2 = reach2 - across * across, lowest = along - contact.shift(across);
    double c = lowest > 0.0 ? lowest : 0.0;
    c = c < length ? c : length;
    const double off2 = (c - along) * (c - along);
    double d = std::sqrt(across * across + off2) - flat;
    d = d > 0.0 ? d : 0.0;
    d = d < corner ? d : corner; // rounding at the rim must not lose the cell
    constexpr double kOut = std::numeric_limits<double>::infinity();
    return z + slope * c + d * d / (corner + std::sqrt((corner - d) * (corner + d))) +
           (w2 < 0.0 ? kOut : 0.0) + ((c != lowest) & (off2 > w2) ? kOut : 0.0);
  }
};

/// Any other cutter on any line.
struct AnyOnLine {
  Vec2 low, along;
  double length, z, slope;
  Flank flank;
  AnyOnLine(const FloorStroke &s, const Flank &f)
      : low(s.low), along(s.low_along), length(s.length_mm), z(s.z_mm), slope(s.slope), flank(f) {}
  double operator()(double px, double py) const;
};

/// Any cutter on a level plan arc: distance in plan decides.
struct AnyOnLevelArc {
  FloorStroke stroke;
  Flank flank;
  AnyOnLevelArc(const FloorStroke &s, const Flank &f) : stroke(s), flank(f) {}
  double operator()(double px, double py) const {
    const double d = stroke.distance_mm({px, py});
    return d <= flank.reach ? stroke.z_mm + flank.height(d) : std::numeric_limits<double>::infinity();
  }
};

/// Flat disc on a rising plan arc of at most an eighth of a circle: the low end if the disc covers the cell
/// there, else the place at which its rim comes over it.
struct DiscOnHelix {
  double x, y, low_x, low_y, end_x, end_y, turn, radius, reach, z, rise_per_rad;
  DiscOnHelix(const FloorStroke &s, const Flank &f)
      : x(s.centre.x), y(s.centre.y), low_x((s.low.x - x) / s.radius_mm), low_y((s.low.y - y) / s.radius_mm),
        end_x((s.high.x - x) / s.radius_mm), end_y((s.high.y - y) / s.radius_mm), turn(s.turn),
        radius(s.radius_mm), reach(f.reach), z(s.z_mm), rise_per_rad(s.slope * s.radius_mm) {}
  double operator()(double px, double py) const {
    const double dx = px - x, dy = py - y, rho = std::sqrt(dx * dx + dy * dy), gap = rho - radius;
    // Half the angle over which the disc covers the cell, by its sine's square: d^2 = gap^2 + 4 rho r sin^2.
    const double sine2 = (reach - gap) * (reach + gap) / (4.0 * rho * radius + kLeast);
    const double half2 = sine2 > 0.0 ? (sine2 < 1.0 ? sine2 : 1.0) : 0.0;
    const double cosine = 1.0 - 2.0 * half2, sine = 2.0 * std::sqrt(half2 * (1.0 - half2)) * turn;
    const double ux = dx / (rho + kLeast), uy = dy / (rho + kLeast);
    const double ex = ux * cosine + uy * sine, ey = uy * cosine - ux * sine; // the axis then, from the centre
    const double across = turn * (low_x * ey - low_y * ex), along = low_x * ex + low_y * ey;
    const double left = turn * (ex * end_y - ey * end_x);
    const double ox = dx - radius * low_x, oy = dy - radius * low_y;
    constexpr double kOut = std::numeric_limits<double>::infinity();
    const double out = (across < -kJoint ? kOut : 0.0) + (left < -kJoint ? kOut : 0.0) +
                       (along < 0.0 ? kOut : 0.0) + (sine2 < 0.0 ? kOut : 0.0);
    const double entering = z + rise_per_rad * 2.0 * arc_of(across / (1.0 + std::abs(along))) + out;
    return ox * ox + oy * oy <= reach * reach ? z : entering;
  }

private:
  static constexpr double kLeast = 1e-300;
  static constexpr double kJoint = 1e-12; ///< rounding must not lose a cell between joined arcs [rad]
  /// Arc of a tangent up to tan(pi / 8), by Gregory's series; the first term left out is 2e-13.
  static double arc_of(double tangent) {
    const double t2 = tangent * tangent;
    double sum = 0.0;
#pragma GCC unroll 16
    for (int term = 14; term >= 0; --term)
      sum = 1.0 / (2 * term + 1) - t2 * sum;
    return tangent * sum;
  }
};

/// Any cutter on a rising plan arc.
struct AnyOnHelix {
  FloorStroke stroke;
  Flank flank;
  double rise_per_rad;
  AnyOnHelix(const FloorStroke &s, const Flank &f)
      : stroke(s), flank(f), rise_per_rad(s.slope * s.radius_mm) {}
  double operator()(double px, double py) const;
};

/// Where on a straight stroke, from its low end, the lowest contact with a cell lies; where a level tip lies
/// flat on it, the first such place.
double first_contact_mm(const FloorStroke &stroke, const Flank &flank, Vec2 cell);

} // namespace asperity
