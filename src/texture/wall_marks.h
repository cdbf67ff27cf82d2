// Height of tooth marks at a point of a wall that a pass has cut.
#pragma once

#include "marking_cutter.h"
#include "pass.h"

namespace asperity {

/// A cell's ray, and what the wall is like there.
struct WallRay {
  Vec2 foot{0.0}, normal{0.0};
  double wall_per_mm = 0;  ///< 1 / wall radius: positive on a disc, negative in a bore
  double facing_turns = 0; ///< direction from the axis to the wall, in turns from +x
};
WallRay wall_ray(const WallChart &chart, std::size_t column);

/// Who cut a cell, and where its surface lies.
struct CutCell {
  std::size_t part = 0; ///< of the pass
  double e_mm = 0;
  double z_mm = 0;
};

class WallMarks {
public:
  explicit WallMarks(const TextureSource &source) : source_(source), store_(source.job) {}

  /// Above the smooth sweep, which the longest tooth makes. Nothing where the neighbouring pass has the say.
  std::optional<double> height_mm(const Pass &pass, const WallRay &ray, const CutCell &cell);
  /// Marks at the programmed-feed or local speed of a piece passing by; nothing where it leaves none.
  const ToothMarks *marks_of(std::uint16_t tool, double radius_mm, const Moment &moment, double wall_per_mm,
                             bool is_climb);

private:
  const TextureSource &source_;
  MarkStore store_;
};

} // namespace asperity
