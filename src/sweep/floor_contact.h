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
