// A surface seen from above: residual e along z over x and y. For floors, domes and sculpted tops.
#pragma once

#include "asperity/chart/wall_chart.h"

#include <cstdint>

namespace asperity {

/// Cell (i, j) stands at x_mm(i), y_mm(j); index = j * nx + i. Cells outside the feature have wanted_mm = NaN
/// and are never swept. Residuals are heights above wanted_mm [mm]: > 0 stock left, < 0 cut too deep.
struct FloorChart {
  Vec2 origin_mm{0.0}; ///< centre of cell (0, 0)
  double spacing_mm = 0;
  std::size_t nx = 0, ny = 0;
  LargeArray<float> wanted_mm; ///< wanted height of the surface minus base_mm
  double base_mm = 0;          ///< so that wanted_mm stays small: floors have wanted_mm = 0
  LargeArray<float>
      envelope_mm;            ///< lowest height any pass leaves, above wanted; +infinity where none reaches
  LargeArray<float> blank_mm; ///< the blank's top above wanted
  LargeArray<std::uint32_t> owner;

  double x_mm(std::size_t i) const { return origin_mm.x + spacing_mm * static_cast<double>(i); }
  double y_mm(std::size_t j) const { return origin_mm.y + spacing_mm * static_cast<double>(j); }
  std::size_t at(std::size_t i, std::size_t j) const { return j * nx + i; }
  bool in_feature(std::size_t cell) const { return wanted_mm[cell] == wanted_mm[cell]; }
  float residual_mm(std::size_t cell) const {
    return envelope_mm[cell] < blank_mm[cell] ? envelope_mm[cell] : blank_mm[cell];
  }
  bool is_cut(std::size_t cell) const { return envelope_mm[cell] < blank_mm[cell]; }
};

/// Empty chart (all cells in the feature, wanted 0, no blank limit) over the box low..high.
FloorChart make_floor_chart(Vec2 low_mm, Vec2 high_mm, double spacing_mm, double base_mm, int threads = 1);

} // namespace asperity
