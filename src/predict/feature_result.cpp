// Sizes by the feature's kind, and the residual over the cells a pass has cut.
#include "feature_result.h"

#include <algorithm>
#include <limits>

namespace asperity {

FeatureResult feature_result(const Feature &feature, const Chart &chart, const WallReference *reference) {
  FeatureResult result;
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    result.sizes = measure_wall(*wall, std::get<WallChart>(chart), reference);
  else if (const auto *floor = std::get_if<FloorFeature>(&feature))
    result.sizes = measure_floor(*floor, std::get<FloorChart>(chart));
  else
    result.sizes = measure_dome(std::get<DomeFeature>(feature), std::get<FloorChart>(chart));

  // Residual over the cells a pass has cut.
  std::size_t cells = 0, cut = 0;
  double sum = 0.0, low = std::numeric_limits<double>::infinity(), high = -low;
  const auto count = [&](const auto &c, std::size_t cell) {
    ++cells;
    if (!c.is_cut(cell))
      return;
    ++cut;
    const double e = c.residual_mm(cell);
    sum += e;
    low = std::min(low, e);
    high = std::max(high, e);
  };
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    for (std::size_t cell = 0; cell < wall->envelope_mm.size(); ++cell)
      count(*wall, cell);
  } else {
    const auto &floor = std::get<FloorChart>(chart);
    for (std::size_t cell = 0; cell < floor.envelope_mm.size(); ++cell)
      if (floor.in_feature(cell))
        count(floor, cell);
  }
  if (cut > 0) {
    result.cut_share = static_cast<double>(cut) / static_cast<double>(cells);
    result.lowest_um = low * 1e3;
    result.mean_um = sum / static_cast<double>(cut) * 1e3;
    result.highest_um = high * 1e3;
  }
  return result;
}

} // namespace asperity
