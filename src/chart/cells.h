// How many equal cells of at most a wanted size fill a length, and where their middles stand.
#pragma once

#include <cassert>
#include <cmath>
#include <cstddef>
#include <vector>

namespace asperity {

/// At least one. A length that is a whole number of cells but for rounding gets no extra cell.
inline std::size_t cell_count(double length_mm, double spacing_mm) {
  assert(spacing_mm > 0.0);
  const double count = std::ceil(length_mm / spacing_mm * (1.0 - 1e-12));
  return count > 1.0 ? static_cast<std::size_t>(count) : 1;
}

inline std::vector<double> cell_middles_mm(double begin_mm, double end_mm, double spacing_mm) {
  const std::size_t count = cell_count(end_mm - begin_mm, spacing_mm);
  const double step = (end_mm - begin_mm) / static_cast<double>(count);
  std::vector<double> middles(count);
  for (std::size_t i = 0; i < count; ++i)
    middles[i] = begin_mm + (static_cast<double>(i) + 0.5) * step;
  return middles;
}

} // namespace asperity
