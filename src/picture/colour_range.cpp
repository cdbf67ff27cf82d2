// Which residuals the colours span.
#include "colour_range.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::vector<float> sorted_cut(const Raster &raster) {
  std::vector<float> values;
  for (std::size_t i = 0; i < raster.surface.size(); ++i)
    if (raster.surface[i] == Surface::cut && std::isfinite(raster.residual_um[i]))
      values.push_back(raster.residual_um[i]);
  std::sort(values.begin(), values.end());
  return values;
}

double at_share(const std::vector<float> &sorted, double share) {
  return static_cast<double>(
      sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))]);
}

void choose(ColourRange &range, const std::vector<float> &sorted) {
  // Narrower than +-5 um nobody feels or measures a wall of a small part; colours would show rounding.
  constexpr double kSpreads = 6.0, kLeast_um = 10.0, kFarOff = 0.15, kNarrowest_um = 5.0;
  const double median = at_share(sorted, 0.5);
  const double fence = std::max(kSpreads * (at_share(sorted, 0.75) - at_share(sorted, 0.25)), kLeast_um);
  const double low = std::max(static_cast<double>(sorted.front()), median - fence);
  const double high = std::min(static_cast<double>(sorted.back()), median + fence);
  const double from_wanted = std::max(std::abs(low), std::abs(high));
  const double from_median = std::max(median - low, high - median);
  // A surface that lies far off as a whole would be one flat colour: show it about its median and say so.
  range.about_median = std::max(from_median, kNarrowest_um) < kFarOff * from_wanted;
  range.centre_um = range.about_median ? median : 0.0;
  range.half_um = round_up(std::max(range.about_median ? from_median : from_wanted, kNarrowest_um));
}

void count(ColourRange &range, const std::vector<float> &sorted) {
  const double one = 1.0 / static_cast<double>(sorted.size());
  for (float value : sorted) {
    const double place = range.place(static_cast<double>(value));
    // The ends themselves are shown; a hair beyond is rounding of the mean in a pixel.
    constexpr double kHair = 1e-6;
    range.share_below += place < -1.0 - kHair ? one : 0.0;
    range.share_above += place > 1.0 + kHair ? one : 0.0;
    const double bin = std::clamp((place + 1.0) * 0.5, 0.0, 1.0) * static_cast<double>(kBins);
    range.histogram[std::min(static_cast<std::size_t>(bin), kBins - 1)] += one;
  }
}

} // namespace

double round_up(double x) {
  const double power = std::pow(10.0, std::floor(std::log10(x)));
  for (double step : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0})
    if (step * power >= x * (1.0 - 1e-9))
      return step * power;
  return 10.0 * power;
}

ColourRange colour_range(const Raster &raster, double half_range_um) {
  ColourRange range;
  const std::vector<float> sorted = sorted_cut(raster);
  if (half_range_um > 0.0)
    range.half_um = half_range_um;
  if (sorted.empty())
    return range;
  if (!(half_range_um > 0.0))
    choose(range, sorted);
  count(range, sorted);
  return range;
}

} // namespace asperity
