// What rays find in neighbouring rows, and how it lowers their cells.
#pragma once

#include "sweep_wall_lanes.h"

namespace asperity {

/// What one ray finds in each row; a value that is no number cuts nothing.
struct LaneEntries {
  alignas(32) std::array<float, kLanes> e_mm;
  alignas(32) std::array<std::uint32_t, kLanes> owner;
};

/// Lowers a column's cells to what its ray finds in the first kUsed lanes. Inline: the sweep's hot spot.
template <std::size_t kUsed>
inline __attribute__((always_inline)) void lower_column(const LaneEntries &entries, std::size_t column,
                                                        LaneCells &cells) {
  float *__restrict envelope = &cells.envelope_mm[column * kLanes];
  std::uint32_t *__restrict owner = &cells.owner[column * kLanes];
#pragma omp simd
  for (std::size_t i = 0; i < kUsed; ++i) {
    const bool is_lower = entries.e_mm[i] < envelope[i];
    const bool is_tie = entries.e_mm[i] == envelope[i] && entries.owner[i] < owner[i];
    envelope[i] = is_lower ? entries.e_mm[i] : envelope[i];
    owner[i] = is_lower || is_tie ? entries.owner[i] : owner[i];
  }
}

} // namespace asperity
