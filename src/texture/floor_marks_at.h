// Height of tooth marks at a point of a floor that a pass has cut.
#pragma once

#include "arcs_beside.h"
#include "marking_cutter.h"
#include "pass_track.h"

namespace asperity {

/// Rise of the end edges of a flat cutter from their corners to the centre. From memory: end mills are dished
/// 1 to 3 degrees.
inline constexpr double kDish_rad = 0.034906585039886591; // 2 degrees

/// Which teeth of a cutter mark a floor, and how. A tooth's axial lead over the others is taken as large as
/// its radial one.
struct FloorTooth {
  enum class Kind { none, dents, arcs } kind = Kind::none;
  double hollow_mm = 0; ///< radius of ball or corner; 0 = sharp corner
  double circle_mm = 0; ///< arcs: radius of the lowest points' circle
  int marking = 1;      ///< marks a revolution
  double pitch_mm = 0;  ///< between marks; 0 = none
};

struct FloorPoint; ///< as seen from a pass

class FloorMarks {
public:
  explicit FloorMarks(const TextureSource &source);

  /// Above the smooth sweep of an upright cutter. Nothing where the neighbouring pass has the say.
  std::optional<double> height_mm(const Pass &pass, const PassTrack &track, std::size_t part, Vec2 p);
  /// The mark of an end tooth at a point, from which those beside it can be told.
  struct Arc {
    PassTrack::Meeting met; ///< when the end circle went over the point
    double side = -1;       ///< -1: with its leading half, +1: with the trailing one
    FloorTooth tooth;
    double since = 0; ///< turns between marks since then, 0..1
  };
  struct KnownArc {
    Arc arc;
    ArcMet met;
    double turns_per_mm = 0, turns_per_rad = 0; ///< between marks
  };
  /// Nothing but where the axis followed a line or arc at steady speed, upright.
  std::optional<KnownArc> known_arc(const Pass &pass, const PassTrack &track, std::size_t part, Vec2 p);
  struct Row {
    Eight height_mm{};
    Eight known{}; ///< 1; 0 where the axis was on another line or arc
  };
  /// Heights at points x_mm further along x.
  static Row beside(const KnownArc &arc, const Eight &x_mm);
  FloorTooth tooth(std::uint16_t tool, const Moment &moment);

private:
  /// What a cutter's marks are like, whatever its feed.
  struct Still {
    FloorTooth tooth; ///< no pitch
    int flutes = 1;
    double lead_mm = 0; ///< of the longest tooth over the second longest
  };
  const Still &still(std::uint16_t tool);
  std::optional<double> dent_mm(const Pass &pass, const PassTrack &track, const FloorPoint &seen);
  /// Nothing where none is left, or where the neighbouring pass has the say.
  std::optional<Arc> arc(const Pass &pass, const PassTrack &track, const FloorPoint &seen,
                         bool &is_neighbours);
  std::optional<double> arc_mm(const Pass &pass, const PassTrack &track, const FloorPoint &seen);
  double lean_mm(const FloorPoint &seen, double circle_mm) const;

  const TextureSource &source_;
  MarkStore store_;
  std::map<std::uint16_t, Still> still_;
  const Still *last_still_ = nullptr;
  std::uint16_t last_tool_ = 0;
  double lean_; ///< tangent of the spindle's angle to the upright
};

} // namespace asperity
