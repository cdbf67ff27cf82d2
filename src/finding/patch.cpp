// Connected patches of marked cells on a chart.
#include "patch.h"

#include <algorithm>

namespace asperity {

std::vector<Patch> patches_of(const std::vector<bool> &marked, std::size_t columns, bool wraps) {
  std::vector<Patch> patches;
  std::vector<bool> seen(marked.size(), false);
  std::vector<std::size_t> open;
  const auto visit = [&](std::size_t cell) {
    if (marked[cell] && !seen[cell]) {
      seen[cell] = true;
      open.push_back(cell);
    }
  };
  for (std::size_t start = 0; start < marked.size(); ++start) {
    if (!marked[start] || seen[start])
      continue;
    Patch patch;
    visit(start);
    while (!open.empty()) {
      const std::size_t cell = open.back(), column = cell % columns;
      open.pop_back();
      patch.cells.push_back(cell);
      if (column > 0 || wraps)
        visit(column > 0 ? cell - 1 : cell + columns - 1);
      if (column + 1 < columns || wraps)
        visit(column + 1 < columns ? cell + 1 : cell + 1 - columns);
      if (cell >= columns)
        visit(cell - columns);
      if (cell + columns < marked.size())
        visit(cell + columns);
    }
    patches.push_back(std::move(patch));
  }
  std::stable_sort(patches.begin(), patches.end(),
                   [](const Patch &a, const Patch &b) { return a.cells.size() > b.cells.size(); });
  return patches;
}

} // namespace asperity
