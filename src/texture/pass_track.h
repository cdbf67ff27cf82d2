// A pass as one long line: places by distance along it.
#pragma once

#include "arcs_beside.h"
#include "pass.h"

#include <optional>

namespace asperity {

/// Remembers where it was asked last: not for several threads.
class PassTrack {
public:
  struct Place {
    std::size_t part = 0;
    double u = 0;
  };

  explicit PassTrack(const Pass &pass);

  /// Nearest to p in plan, sought downhill from a part.
  Place nearest(std::size_t from_part, Vec2 p) const;
  double along_mm(Place place) const;
  /// Clamped to the track.
  Place at(double along_mm) const;
  struct Spot {
    Vec2 point{0.0}, heading{0.0}; ///< in plan; heading unit, or 0
  };
  Spot spot(Place place) const;
  /// The same where the place is the nearest to p.
  Spot spot_nearest(Place place, Vec2 p) const;
  /// Where the axis, on the arc of p's nearest place, stood at a distance from p.
  struct Meeting {
    Place place;
    Vec2 to_point{0.0}; ///< from the axis to p
    double along_mm = 0;
  };
  /// After p's nearest place where side is +1, before it where side is -1. Nothing where the pass is not such
  /// an arc there.
  std::optional<Meeting> meeting_on_arc(Place nearest, Vec2 p, double distance_mm, double side) const;
  Moment moment(Place place) const;
  /// The line or arc on which the axis stood, where it was taken at one speed.
  struct Course {
    ArcMet met;
    double turns_per_mm = 0; ///< of the spindle
  };
  std::optional<Course> steady_course(const Meeting &meeting) const;
  double length_mm() const { return begins_mm_.back(); }
  const PassPart &part(Place place) const { return *pass_.parts[place.part]; }

private:
  /// What is asked of a part again and again, in plan.
  struct Way {
    enum class Kind { line, arc, other } kind = Kind::other;
    Vec2 begin{0.0}, along{0.0}, heading{0.0}; ///< line
    double per_square = 0;                     ///< line: of along; 0 where the part stands
    Vec2 centre{0.0}, out{0.0}, on{0.0}; ///< arc: unit spoke to its middle, and the same a quarter turn on
    double radius_mm = 0, sweep_rad = 0; ///< arc
    double level = 1;                    ///< share of the motion, but of others
    bool is_steady = false;              ///< at one speed all along, so that turns go on evenly
    Moment at_begin;
    double turns = 0; ///< of the spindle from begin to end
  };
  static Way way_of(const Curve &curve);
  double nearest_share_on(std::size_t part, Vec2 p) const;
  Moment looked_up(Place place) const;
  bool holds(std::size_t part, double along_mm) const {
    return begins_mm_[part] <= along_mm && along_mm < begins_mm_[part + 1];
  }

  const Pass &pass_;
  std::vector<double> begins_mm_; ///< of each part, and the end
  std::vector<Way> ways_;
  mutable std::size_t last_ = 0; ///< part that at() gave; neighbouring points ask for the same
};

} // namespace asperity
