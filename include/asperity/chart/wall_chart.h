// The unrolled wall: residual e along the wall's own normal, over arc length s and height z.
#pragma once

#include "asperity/base/large_array.h"
#include "asperity/shape/outline.h"

#include <cstdint>
#include <limits>
#include <vector>

namespace asperity {

inline constexpr std::uint32_t kNobody = 0xffffffffu;

/// Column i stands at arc length s_mm[i] on the outline, row j at height z_mm[j]. Rays run along the normal
/// that leaves the material (outline's outward normal for an outside wall, its opposite for an inside wall).
/// e > 0: stock left standing; e < 0: cut too deep [mm]. Cells are row-major: index = j * columns + i.
struct WallChart {
  Outline outline;
  bool inside = false;
  std::vector<double> s_mm, z_mm;
  std::vector<Vec2> foot, normal; ///< of each column
  double band_mm = 5.0;           ///< e is followed within [-band, +band]
  LargeArray<float> envelope_mm;  ///< lowest surface any pass leaves; +infinity where no pass reaches
  LargeArray<float> blank_mm;     ///< the blank's own surface
  LargeArray<std::uint32_t>
      owner; ///< SweptPiece::owner of what made envelope_mm; smallest on ties; else kNobody

  std::size_t columns() const { return s_mm.size(); }
  std::size_t rows() const { return z_mm.size(); }
  std::size_t at(std::size_t column, std::size_t row) const { return row * s_mm.size() + column; }
  /// What remains: the lower of envelope and blank.
  float residual_mm(std::size_t cell) const {
    return envelope_mm[cell] < blank_mm[cell] ? envelope_mm[cell] : blank_mm[cell];
  }
  bool is_cut(std::size_t cell) const { return envelope_mm[cell] < blank_mm[cell]; }
};

/// Evenly spaced chart; spacing is rounded down so that columns close round the outline and rows fill the
/// height (columns and rows stand at the middle of their cells).
WallChart make_wall_chart(const Outline &outline, bool inside, double z_bottom_mm, double z_top_mm,
                          double spacing_mm, int threads = 1);
/// Chart on given columns and rows (probes of one column, fine rows at a step...). s and z must rise.
WallChart make_wall_chart(const Outline &outline, bool inside, std::vector<double> s_mm,
                          std::vector<double> z_mm, int threads = 1);

} // namespace asperity
