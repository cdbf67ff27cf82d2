// The swept path in parts short enough to be placed on the clock, each knowing where it runs.
#pragma once

#include "curve_place.h"

#include "asperity/sweep/swept_path.h"

#include <vector>

namespace asperity {

/// A swept piece, or part of one, that turns by no more than a radian.
struct PassPart {
  BentPiece piece;
  const PathPiece *timed = nullptr;
  Stretch stretch; ///< of the timed piece
  double plan_length_mm = 0;
  double turn_rad = 0;                    ///< within the part, positive to the left
  Vec2 heading_in{0.0}, heading_out{0.0}; ///< unit, 0 where the cutter stands or plunges
  Vec2 low{0.0}, high{0.0};               ///< plan box of the tip
  double z_low_mm = 0, z_high_mm = 0;
  bool begins_pass = false; ///< does not run on from the part before: a gap, a stand, a corner

  bool stands() const { return plan_length_mm == 0; }
  double tip_z_mm(double u) const {
    return piece.curve.point(u).z + piece.begin.axial_mm + u * (piece.end.axial_mm - piece.begin.axial_mm);
  }
};

/// A box of the part frame [mm].
struct Region {
  Vec2 low{0.0}, high{0.0};
  double z_low_mm = 0, z_high_mm = 0;
};

/// Parts of the pieces that may reach into the region, reach_mm beyond their cutter's radius; where pieces
/// are left out a pass ends.
LargeArray<PassPart> pass_parts(const TimedPath &path, const SweptPath &swept, const Region &region,
                                double reach_mm);

/// At least as long as the axis is offset in plan anywhere along the piece.
double largest_bend_mm(const BentPiece &piece);
/// Offset of the bent axis in plan at a height above the tip, u between the piece's ends; `right`: as it
/// holds for a wall to the right of the motion.
Vec2 bend_mm(const BentPiece &piece, const SweptCutter &cutter, double u, double height_mm, bool right);

} // namespace asperity
