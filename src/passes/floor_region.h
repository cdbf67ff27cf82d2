// Where the cutter's axis may be on a floor, and what it reaches from there.
#pragma once

#include "asperity/passes/route.h"
#include "planning.h"

#include <optional>
#include <span>
#include <vector>

namespace asperity {

class FloorRegion {
public:
  /// Nothing if the cutter does not fit; the problem has been reported.
  static std::optional<FloorRegion> of(const Planning &planning, const FloorFeature &floor);

  const Outline &outer() const { return outer_; }
  /// The islands' outlines, grown by the distance the axis must keep.
  const std::vector<Outline> &islands() const { return islands_; }
  /// Distance the axis keeps from an island's edge [mm].
  double island_distance_mm() const { return island_mm_; }
  bool clears_islands(Vec2 p) const;
  bool clears(Vec2 p) const;
  /// The straight way at floor height cuts neither island nor wall.
  bool clears(Vec2 from, Vec2 to) const;
  /// Share of the floor that strokes from `first` on leave uncut, and one such place.
  double uncut_share(std::span<const PassStroke> strokes, Vec2 &place) const;

private:
  bool must_be_cut(Vec2 p) const;

  const FloorFeature *floor_ = nullptr;
  FloorEdge edge_ = FloorEdge::open;
  double radius_mm_ = 0, island_mm_ = 0, gap_mm_ = 0;
  Outline outer_;
  std::vector<Outline> islands_;
};

} // namespace asperity
