// Connected patches of marked cells on a chart.
#include "patch.h"

#include <algorithm>
#include <numeric>

namespace asperity {

namespace {

std::vector<CellRun> runs_of(const std::vector<bool> &marked, std::size_t columns) {
  std::vector<CellRun> runs;
  for (std::size_t cell = 0; cell < marked.size(); ++cell) {
    if (!marked[cell])
      continue;
    const auto row = static_cast<std::uint32_t>(cell / columns),
               column = static_cast<std::uint32_t>(cell % columns);
    if (column > 0 && marked[cell - 1])
      runs.back().last = column;
    else
      runs.push_back({row, column, column});
  }
  return runs;
}

/// Runs that belong together, each set named by its first run.
class RunSets {
public:
  explicit RunSets(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0U); }

  std::uint32_t first_of(std::uint32_t run) {
    while (parent_[run] != run)
      run = parent_[run] = parent_[parent_[run]];
    return run;
  }
  void join(std::uint32_t a, std::uint32_t b) {
    a = first_of(a), b = first_of(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }

private:
  std::vector<std::uint32_t> parent_;
};

/// Joins runs that touch across neighbouring rows, and across the seam.
RunSets joined(const std::vector<CellRun> &runs, std::size_t columns, bool wraps) {
  RunSets sets(runs.size());
  std::uint32_t above = 0, row_begin = 0; // the first run of the row before that may still touch; of this row
  for (std::uint32_t i = 0; i < runs.size(); ++i) {
    if (i > 0 && runs[i].row != runs[i - 1].row) {
      above = row_begin;
      row_begin = i;
    }
    while (above < row_begin && (runs[above].row + 1 < runs[i].row || runs[above].last < runs[i].first))
      ++above;
    for (std::uint32_t k = above; k < row_begin && runs[k].first <= runs[i].last; ++k)
      sets.join(i, k);
    if (wraps && runs[i].last + 1 == columns && runs[row_begin].first == 0)
      sets.join(i, row_begin);
  }
  return sets;
}

} // namespace

bool Patch::holds(std::size_t row, std::size_t column) const {
  return std::any_of(runs.begin(), runs.end(), [&](const CellRun &run) {
    return run.row == row && run.first <= column && column <= run.last;
  });
}

std::vector<Patch> patches_of(const std::vector<bool> &marked, std::size_t columns, bool wraps) {
  const std::vector<CellRun> runs = runs_of(marked, columns);
  RunSets sets = joined(runs, columns, wraps);
  std::vector<Patch> patches;
  std::vector<std::uint32_t> patch_of(runs.size());
  for (std::uint32_t i = 0; i < runs.size(); ++i) {
    const std::uint32_t first = sets.first_of(i);
    if (first == i) {
      patch_of[i] = static_cast<std::uint32_t>(patches.size());
      patches.emplace_back();
    }
    Patch &patch = patches[patch_of[first]];
    patch.runs.push_back(runs[i]);
    patch.cells += runs[i].last - runs[i].first + 1;
  }
  std::stable_sort(patches.begin(), patches.end(),
                   [](const Patch &a, const Patch &b) { return a.cells > b.cells; });
  return patches;
}

} // namespace asperity
