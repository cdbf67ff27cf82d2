// A portion of the path as strokes, in the order of their owners, with what is needed to name each cell's
// owner.
#pragma once

#include "floor_block.h"
#include "floor_flank.h"
#include "floor_hull.h"
#include "floor_merge.h"
#include "floor_stroke.h"
#include "left_alone.h"

#include "asperity/sweep/sweep_floor.h"

#include <array>
#include <span>
#include <vector>

namespace asperity {

struct FloorPath {
  std::vector<Flank> flanks;                                ///< of the cutters
  std::vector<FloorStroke, LeftAlone<FloorStroke>> strokes; ///< by rising owner
  std::vector<std::uint32_t, LeftAlone<std::uint32_t>>
      stroke_owner; ///< of each stroke; of a merged one the least; last, of none: kNobody
  FloorRuns runs;
  FloorHulls hulls;
  std::size_t end = 0; ///< the piece after the last

  /// What is looked for first.
  std::span<const FloorStroke> outlines() const {
    if (hulls.hulls.empty())
      return strokes;
    return hulls.hulls;
  }
  std::int32_t none() const { return static_cast<std::int32_t>(strokes.size()); }
  /// Who owns each cell of a block about `middle`; kNobody where no stroke came.
  void find_owners(const FloorBlock &block, Vec2 middle, double spacing_mm,
                   std::array<std::uint32_t, FloorBlock::kCells> &owner) const;

private:
  /// As if the run had won every cell.
  void find_run_owners(std::int32_t index, Vec2 middle, double spacing_mm,
                       std::array<std::uint32_t, FloorBlock::kCells> &owner) const;
};

/// How a path is taken.
struct FloorPortions {
  double merge_within_mm = kSameLine_mm;
  /// So many pieces are laid out at a time, until there are so many strokes or pieces.
  std::size_t at_once = std::size_t{1} << 15;
  std::size_t strokes = kFloorSweepStrokes, pieces = kFloorSweepPieces;
};

/// The portion of the path that begins with a piece. It does not depend on the number of threads.
FloorPath floor_path(const SweptPath &path, std::size_t begin, const FloorPortions &portions, int threads);

} // namespace asperity
