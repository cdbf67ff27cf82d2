// Height parameters of a surface.
#include "asperity/surface/areal_parameters.h"

#include "moments.h"

#include <cassert>

namespace asperity {

namespace {

template <typename Height>
ArealParameters parameters_of(std::span<const Height> heights, std::span<const std::uint8_t> valid) {
  assert(valid.empty() || valid.size() == heights.size());
  const auto counts = [&](std::size_t cell) { return valid.empty() || valid[cell] != 0; };

  // The mean first, then moments about it.
  double sum = 0;
  std::size_t cells = 0;
  for (std::size_t cell = 0; cell < heights.size(); ++cell)
    if (counts(cell)) {
      sum += static_cast<double>(heights[cell]);
      ++cells;
    }
  if (cells == 0)
    return {};
  const double mean = sum / static_cast<double>(cells);
  Moments moments;
  for (std::size_t cell = 0; cell < heights.size(); ++cell)
    if (counts(cell))
      moments.add(static_cast<double>(heights[cell]) - mean);

  return {.sa_mm = moments.mean_absolute(),
          .sq_mm = moments.root_mean_square(),
          .sp_mm = moments.highest,
          .sv_mm = -moments.lowest,
          .sz_mm = moments.highest - moments.lowest,
          .ssk = moments.skewness(),
          .sku = moments.kurtosis(),
          .cells = cells};
}

} // namespace

ArealParameters areal_parameters(std::span<const double> heights_mm, std::span<const std::uint8_t> valid) {
  return parameters_of(heights_mm, valid);
}

ArealParameters areal_parameters(std::span<const float> heights_mm, std::span<const std::uint8_t> valid) {
  return parameters_of(heights_mm, valid);
}

ArealParameters areal_parameters(const HeightGrid &grid) {
  return areal_parameters(grid.heights_mm, grid.valid);
}

} // namespace asperity
