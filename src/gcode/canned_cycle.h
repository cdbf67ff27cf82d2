// Drilling, tapping and boring cycles unfolded into plain moves, one hole at a time [NISTIR 6556, 3.5.16].
#pragma once

#include "asperity/base/vec.h"
#include "asperity/gcode/program.h"
#include "codes.h"

#include <vector>

namespace asperity::gcode {

/// One hole in the output frame [mm]; heights are along `axis`, the one across the plane.
struct Hole {
  Code cycle = 810;
  int axis = 2;
  Vec3 tip{0.0};         ///< where the tip stands before it
  Vec3 place{0.0};       ///< the hole in the plane; its component along `axis` is not used
  double retract_mm = 0; ///< R
  double bottom_mm = 0;  ///< Z
  double clear_mm = 0;   ///< height after the hole
  double peck_mm = 0;    ///< Q of G83, above zero
  double dwell_s = 0;    ///< P
  Vec3 side_step{0.0};   ///< I, J of G87, in the plane
  double back_mm = 0;    ///< K of G87
  SpindleTurn turn = SpindleTurn::off;
};

struct CycleStep {
  MoveKind kind = MoveKind::rapid;
  Vec3 to{0.0};
  double dwell_s = 0.0;
  SpindleTurn turn = SpindleTurn::off;
};

/// Pecks G83 needs from the retract height to the bottom.
double peck_count(const Hole &hole);

/// Appends the steps of one hole. Steps that go nowhere may be among them.
void unfold_hole(const Hole &hole, std::vector<CycleStep> &steps);

} // namespace asperity::gcode
