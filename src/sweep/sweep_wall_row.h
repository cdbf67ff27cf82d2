// One row of a wall chart under every stroke of the path.
#pragma once

#include "sweep_wall_lanes.h"
#include "sweep_wall_ray.h"

namespace asperity {

/// Follows strokes one after the other on one side of the motion. A row's lowest surface lies either where a
/// stroke's contact runs (a stationary point), or at a joint, an end or a turn of the path (a whole disc).
class WallRow {
public:
  /// Cuts one lane of the cells; rows that do not work at the same time may share the list of sections.
  WallRow(const WallPlan &plan, const ColumnFinder &columns, const WallChart &chart, double z_mm,
          LaneCells &cells, std::size_t lane, SectionList &sections);
  void start(WallSide side);
  void follow(std::size_t stroke);
  /// Ends the path here.
  void close();
  /// Says that the path goes on smoothly, cut by others.
  void forget() { end_ = {}; }
  /// Says that the path was cut by others up to the end of a stroke.
  void recall(std::size_t stroke);
  /// Cuts one ray under a stroke that passes all along the row and whose contacts face the ray.
  void cut_ray(std::size_t stroke, std::size_t column, double u_near, StrokeOwners owners);

private:
  /// The disc at the end of what was followed so far.
  struct End {
    bool is_set = false, is_at_stroke_end = false;
    bool is_still = false; ///< nothing has moved yet since the path began at this row
    Disc disc;
    double u = 0.0;
    std::size_t stroke = 0;
    std::uint32_t owner = 0;
  };
  /// Which rays a disc may cut: those with the wall on the right side of its motion.
  struct Seen {
    bool by_all = true;
    Vec2 away{0.0}; ///< rays with normal·away < 0 (strict for left, or not)
    bool is_strict = true;
    double slack = 0.0;
    bool includes(Vec2 normal) const;
  };

  void follow_section(const Section &section, std::size_t stroke, bool is_joined);
  bool meet_joint(const Section &section, std::size_t stroke, const Disc &begin, bool is_joined);
  void cut_disc(std::size_t stroke, const Disc &disc, const Seen &seen, const Seen &or_seen,
                std::uint32_t owner);
  void cut_contacts(const Section &section, std::size_t stroke, const Disc &begin, const Disc &end,
                    bool has_fan, std::uint32_t begin_owner);
  void cut_crossing(const Section &section, std::size_t stroke, const Disc &begin, const Disc &end);
  Seen seen_from(std::size_t stroke, double u) const;
  void lower(std::size_t column, double e_mm, std::uint32_t owner);

  float &envelope_mm(std::size_t column) { return cells_.envelope_mm[column * kLanes + lane_]; }
  std::uint32_t &owner(std::size_t column) { return cells_.owner[column * kLanes + lane_]; }

  const WallPlan &plan_;
  const ColumnFinder &columns_;
  const WallChart &chart_;
  double z_mm_;
  LaneCells &cells_;
  std::size_t lane_;
  SectionList &sections_;
  WallSide side_ = WallSide::left;
  End end_;
};

} // namespace asperity
