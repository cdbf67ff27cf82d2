// Connected patches of marked cells on a chart.
#pragma once

#include <cstddef>
#include <vector>

namespace asperity {

struct Patch {
  std::vector<std::size_t> cells;
};

/// Patches of cells joined edge to edge, largest first. `wraps`: the columns close round (walls).
std::vector<Patch> patches_of(const std::vector<bool> &marked, std::size_t columns, bool wraps);

} // namespace asperity
