// Which pieces of a path a wall chart needs: far ones take as long to lay out as near ones.
#pragma once

#include "path_portion.h"
#include "sweep_wall_stroke.h"
#include "sweep_wall_window.h"

#include <cstdint>
#include <vector>

namespace asperity {

/// What a piece must come to.
struct WallSurroundings {
  const std::vector<WallElement> &elements;
  double e_most_mm = 0;               ///< entries above this need not be found
  double z_low_mm = 0, z_high_mm = 0; ///< lowest and highest row
};

/// Indices of the pieces that may cut a row of the wall, and of those just before and after such a one, which
/// its ends depend on; in the path's order.
std::vector<std::uint32_t> pieces_about(const WallSurroundings &wall, const SweptPath &path,
                                        const PathPortion &portion, const std::vector<WallCutter> &cutters,
                                        int threads);

/// Cheap first: box against box, then true distance; `reach_mm` from the middle.
bool is_near(const WallElement &element, Vec2 middle_mm, double reach_mm);

} // namespace asperity
