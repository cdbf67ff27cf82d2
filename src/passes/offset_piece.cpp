// Shifting, trimming and crossing single lines and arcs.
#include "offset_piece.h"

#include "asperity/base/units.h"
#include "crossings.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// An arc with less radius left is gone [mm].
constexpr double kNoRadius_mm = 1e-9;
/// A corner that turns less is none.
constexpr double kStraight_rad = 1e-9;

Vec2 right_of(Vec2 direction) { return -left_of(direction); }

} // namespace

std::optional<OffsetPiece> OffsetPiece::round_corner(const OutlineElement &before,
                                                     const OutlineElement &after, double outward_mm) {
  const Vec2 in = before.tangent(before.length_mm()), out = after.tangent(0.0);
  const double turn = std::atan2(cross(in, out), glm::dot(in, out));
  if (std::abs(turn) < kStraight_rad || (turn > 0.0) != (outward_mm > 0.0))
    return std::nullopt;
  OffsetPiece piece;
  piece.corner_before_ = piece.corner_after_ = before.end;
  piece.whole_ = {before.end + outward_mm * right_of(in), before.end + outward_mm * right_of(out), before.end,
                  turn};
  piece.restore();
  return piece;
}

std::optional<OffsetPiece> OffsetPiece::shifted(const OutlineElement &element, double outward_mm) {
  OffsetPiece piece;
  piece.corner_before_ = element.begin;
  piece.corner_after_ = element.end;
  piece.whole_ = element;
  if (element.is_arc()) {
    // Right of a counter-clockwise arc lies outside its circle, right of a clockwise one inside.
    const double radius_mm = element.radius_mm() + (element.sweep_rad > 0.0 ? outward_mm : -outward_mm);
    if (radius_mm <= kNoRadius_mm)
      return std::nullopt;
    const double share = radius_mm / element.radius_mm();
    piece.whole_.begin = element.centre + share * (element.begin - element.centre);
    piece.whole_.end = element.centre + share * (element.end - element.centre);
  } else {
    const Vec2 by = outward_mm * right_of(element.tangent(0.0));
    piece.whole_.begin += by;
    piece.whole_.end += by;
  }
  piece.restore();
  return piece;
}

void OffsetPiece::restore() {
  from_ = 0.0;
  to_ = whole_.length_mm();
}

Vec2 OffsetPiece::at(double place_mm) const {
  if (place_mm == 0.0)
    return whole_.begin;
  if (place_mm == whole_.length_mm())
    return whole_.end;
  if (!whole_.is_arc())
    return whole_.begin + place_mm * whole_.tangent(0.0);
  const double turn = place_mm / whole_.radius_mm() * (whole_.sweep_rad > 0.0 ? 1.0 : -1.0);
  const Vec2 a = whole_.begin - whole_.centre;
  return whole_.centre + std::cos(turn) * a + std::sin(turn) * left_of(a);
}

double OffsetPiece::place_of(Vec2 p) const {
  if (!whole_.is_arc())
    return glm::dot(p - whole_.begin, whole_.tangent(0.0));
  // Measured from the arc's middle, where the ambiguity of a full turn lies farthest from the ends.
  const double half_mm = 0.5 * whole_.length_mm();
  const Vec2 middle = at(half_mm) - whole_.centre, to_p = p - whole_.centre;
  const double turn = std::atan2(cross(middle, to_p), glm::dot(middle, to_p));
  return half_mm + turn * whole_.radius_mm() * (whole_.sweep_rad > 0.0 ? 1.0 : -1.0);
}

double OffsetPiece::beyond_mm(Vec2 p) const {
  const double place_mm = place_of(p);
  return std::max({0.0, -place_mm, place_mm - whole_.length_mm()});
}

OutlineElement OffsetPiece::element() const {
  OutlineElement element{begin(), end(), whole_.centre, 0.0};
  if (whole_.is_arc())
    element.sweep_rad = (to_ - from_) / whole_.radius_mm() * (whole_.sweep_rad > 0.0 ? 1.0 : -1.0);
  return element;
}

std::vector<Vec2> crossings_of(const OffsetPiece &a, const OffsetPiece &b) {
  return endless_crossings(a.whole(), b.whole());
}

} // namespace asperity
