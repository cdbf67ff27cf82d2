// Ra of the tooth marks at one cell of a chart, by the closed forms for single marks.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "floor_marks_at.h"
#include "wall_marks.h"

namespace asperity {

/// Of the pass that made the cell, at its local speed; later passes over the same place may have lowered its
/// cusps.
class MarkRa {
public:
  explicit MarkRa(const TextureSource &source) : source_(source), wall_(source), floor_(source) {}
  double ra_mm(const WallChart &chart, std::size_t cell);
  double ra_mm(const FloorChart &chart, std::size_t cell);

private:
  const TextureSource &source_;
  WallMarks wall_;
  FloorMarks floor_;
};

} // namespace asperity
