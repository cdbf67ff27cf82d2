// A pass as one long line: places by distance along it.
#pragma once

#include "pass.h"

namespace asperity {

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
  Vec2 point(Place place) const;
  /// Unit, in plan.
  Vec2 heading(Place place) const;
  double length_mm() const { return begins_mm_.back(); }
  const PassPart &part(Place place) const { return *pass_.parts[place.part]; }

private:
  /// What is asked of a part again and again.
  struct Way {
    bool is_line = false;
    Vec2 begin{0.0}, along{0.0}, heading{0.0}; ///< of lines only
    double per_square = 0;                     ///< of along; 0 where the part stands
  };
  double nearest_share_on(std::size_t part, Vec2 p) const;

  const Pass &pass_;
  std::vector<double> begins_mm_; ///< of each part, and the end
  std::vector<Way> ways_;
};

} // namespace asperity
