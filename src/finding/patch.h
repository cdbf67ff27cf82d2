// Connected patches of marked cells on a chart.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace asperity {

/// Marked cells side by side in one row: columns first to last.
struct CellRun {
  std::uint32_t row = 0, first = 0, last = 0;
};

/// Kept as runs, so that a large patch takes no more room than its outline is long.
struct Patch {
  std::vector<CellRun> runs; ///< by row, then by column
  std::size_t cells = 0;

  bool holds(std::size_t row, std::size_t column) const;
};

/// Patches of cells joined edge to edge, largest first. `wraps`: the columns close round (walls).
std::vector<Patch> patches_of(const std::vector<bool> &marked, std::size_t columns, bool wraps);

} // namespace asperity
