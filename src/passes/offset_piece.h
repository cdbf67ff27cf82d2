// One element of an outline moved sideways, with how much of it is left after trimming.
#pragma once

#include "asperity/shape/outline.h"

#include <optional>
#include <vector>

namespace asperity {

class OffsetPiece {
public:
  /// The element moved by outward_mm to its right. Nothing for an arc with no radius left.
  static std::optional<OffsetPiece> shifted(const OutlineElement &element, double outward_mm);
  /// The arc round the corner between two elements, where it opens on that side.
  static std::optional<OffsetPiece> round_corner(const OutlineElement &before, const OutlineElement &after,
                                                 double outward_mm);

  Vec2 begin() const { return at(from_); }
  Vec2 end() const { return at(to_); }
  /// Corners of the outline this piece came from.
  Vec2 corner_before() const { return corner_before_; }
  Vec2 corner_after() const { return corner_after_; }
  /// What is left; below 0 when both ends were trimmed past each other.
  double length_mm() const { return to_ - from_; }
  /// The untrimmed line or arc.
  const OutlineElement &whole() const { return whole_; }
  OutlineElement element() const;

  /// How far p lies beyond the untrimmed piece's ends, along it [mm]; 0 on it.
  double beyond_mm(Vec2 p) const;

  void restore();
  void begin_at(Vec2 p) { from_ = place_of(p); }
  void end_at(Vec2 p) { to_ = place_of(p); }

private:
  Vec2 at(double place_mm) const;
  /// Arc length of p along the whole piece; before its begin: negative.
  double place_of(Vec2 p) const;

  OutlineElement whole_;
  Vec2 corner_before_{0.0}, corner_after_{0.0};
  double from_ = 0.0, to_ = 0.0;
};

/// Crossings of the two as endless lines and full circles.
std::vector<Vec2> crossings_of(const OffsetPiece &a, const OffsetPiece &b);

} // namespace asperity
