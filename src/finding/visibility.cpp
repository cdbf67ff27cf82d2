#include "visibility.h"

#include "robust.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <vector>

namespace asperity {

double steepest_along_um_per_mm(const WallChart &chart, std::size_t column, std::size_t row,
                                double reach_mm) {
  constexpr std::size_t kSpan = 4;
  const std::size_t columns = chart.columns();
  if (columns <= 2 * kSpan)
    return 0.0;
  const double spacing = chart.s_mm[1] - chart.s_mm[0];
  const auto reach = std::min(static_cast<std::size_t>(reach_mm / spacing) + kSpan, columns / 2);
  double steepest = 0.0;
  for (std::size_t k = 0; k < 2 * reach; ++k) {
    const std::size_t a = chart.at((column + columns - reach + k) % columns, row);
    const std::size_t b = chart.at((column + columns - reach + k + kSpan) % columns, row);
    if (chart.is_cut(a) && chart.is_cut(b))
      steepest = std::max(steepest, std::abs(double(chart.residual_mm(b)) - double(chart.residual_mm(a))));
  }
  return 1e3 * steepest / (static_cast<double>(kSpan) * spacing);
}

double step_slope_um_per_mm(const WallChart &chart, std::size_t lower_row) {
  if (lower_row + 1 >= chart.rows())
    return 0.0;
  std::vector<double> rises;
  for (std::size_t column = 0; column < chart.columns(); ++column) {
    const std::size_t low = chart.at(column, lower_row), high = chart.at(column, lower_row + 1);
    if (chart.is_cut(low) && chart.is_cut(high))
      rises.push_back(std::abs(double(chart.residual_mm(high)) - double(chart.residual_mm(low))));
  }
  return rises.empty() ? 0.0
                       : 1e3 * median_of(std::span<double>(rises)) /
                             (chart.z_mm[lower_row + 1] - chart.z_mm[lower_row]);
}

void add_visibility(Finding &finding, double slope_um_per_mm, double depth_um, const FinishWanted &wanted) {
  finding.size.push_back({"steepest flank", slope_um_per_mm, "um/mm"});
  if (!wanted.witness_depth_um)
    return;
  finding.size.push_back({"wanted at most", *wanted.witness_depth_um, "um"});
  finding.cause += depth_um > *wanted.witness_depth_um
                       ? fmt::format(" More than the {} um wanted.", *wanted.witness_depth_um)
                       : fmt::format(" Within the {} um wanted.", *wanted.witness_depth_um);
}

} // namespace asperity
