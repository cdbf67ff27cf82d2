// How high the cells of a tile stand already: what stays above them lowers none.
#pragma once

#include "floor_block.h"

#include "asperity/chart/floor_chart.h"

#include <array>

namespace asperity {

/// Where a long path comes again to a tile, most of its strokes lie above what is there.
class FloorCeiling {
public:
  static constexpr std::size_t kBlocks = 8; ///< to a side of a tile

  /// Of the cells from column i0, row j0 on, above a height. Looks no further if the first is still
  /// untouched.
  void find(const FloorChart &chart, std::size_t i0, std::size_t j0, double level_mm);
  /// Over the square of `side` cells from column i, row j of the tile on, above a plane that leans about the
  /// tile's middle; +infinity where some cell is untouched.
  float above(std::size_t i, std::size_t j, std::size_t side, Vec2 gradient) const;

private:
  double spacing_mm_ = 0.0;
  bool is_open_ = true;                                ///< no ceiling at all
  std::array<double, kBlocks * kBlocks> highest_mm_{}; ///< of each block
};

} // namespace asperity
