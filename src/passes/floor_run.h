// Patterns over a floor at one height.
#pragma once

#include "floor_region.h"

namespace asperity {

class FloorRun {
public:
  FloorRun(Planning &planning, const FloorFeature &floor, const FloorRegion &region)
      : planning_(planning), pass_(planning.pass), route_(planning.route), floor_(floor), region_(region) {}

  /// One level of the pass's pattern at z, the floor so far at from_mm; false if it cannot be, with the
  /// problem reported.
  bool run(double from_mm, double z_mm);

private:
  bool lines(double z_mm);
  bool rings(double z_mm);
  bool spiral(double z_mm);
  struct SpiralPlace {
    Vec2 centre, axis;        ///< axis: direction of the start
    double half_turn_rad = 0; ///< signed
  };
  /// A circle, the spiral from one radius to the other, a circle; from where the cutter stands.
  void spiral_turns(const SpiralPlace &place, double from_mm, double to_mm, int turns);

  /// -1: clockwise. Uncut floor lies inside rings that go inwards, outside those that go outwards.
  int turn_of(std::size_t ring) const;
  std::vector<Outline> ring_paths() const;
  void ring(const Outline &path, int turn, double z_mm, bool is_first);
  /// Round what lines cannot follow: the edge beside walls, and the islands.
  void edge_laps(double z_mm, bool with_outer, const std::vector<Outline> &done);
  void line(Vec2 from, Vec2 to, double z_mm, bool is_first, bool may_link);
  /// To p at z: straight through cut floor, or over it.
  void link_to(Vec2 p, double z_mm);
  /// At p, as deep as the level or, where a ramp is to sink to it, as the floor so far.
  void begin_at(Vec2 p, Vec2 outward, double z_mm);
  bool is_ramped() const { return pass_.entry.kind == EntryKind::ramp; }
  /// How often a way of this length must be run so that it sinks to z no steeper than ramp_deg.
  int ramp_runs(double length_mm, double z_mm) const;
  double approach_mm() const;
  Vec2 middle() const { return 0.5 * (floor_.outline.low() + floor_.outline.high()); }

  Planning &planning_;
  const PlannedPass &pass_;
  Route &route_;
  const FloorFeature &floor_;
  const FloorRegion &region_;
  double from_mm_ = 0;
};

} // namespace asperity
