// Heights one stroke leaves over a block, in double precision, for every cutter and curve.
#pragma once

#include "ball_lines.h"
#include "floor_block.h"
#include "floor_flank.h"
#include "floor_stroke.h"

namespace asperity {

struct BlockPlace {
  Vec2 middle{0.0};
  double spacing_mm = 0.0;
  const LeaningPlane &plane;
};

/// Above the plane; +infinity where the stroke does not reach.
void exact_heights(const FloorStroke &stroke, const Flank &flank, const BlockPlace &place,
                   std::array<float, FloorBlock::kCells> &heights);

} // namespace asperity
