// Which values the colours of a scale span.
#include "colour_scale.h"

#include "asperity/base/units.h"
#include "asperity/picture/colour_map.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr std::size_t kMostSamples = 100000;
constexpr int kStops = 9;

double at_share(const std::vector<float> &sorted, double share) {
  return static_cast<double>(
      sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))]);
}

/// Smallest of 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that is not below x > 0.
double rounded_up(double x) {
  const double power = std::pow(10.0, std::floor(std::log10(x)));
  for (double step : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0})
    if (step * power >= x * (1.0 - 1e-9))
      return step * power;
  return 10.0 * power;
}

struct Span {
  double middle = 0, half = 1;
};

/// Half range that holds everything but values far outside the bulk.
Span residual_span_um(const std::vector<float> &sorted_mm) {
  // Narrower than +-5 um nobody feels or measures on a small part; colours would show rounding.
  constexpr double kSpreads = 6.0, kLeast_um = 10.0, kFarOff = 0.15, kNarrowest_um = 5.0;
  if (sorted_mm.empty())
    return {0.0, kNarrowest_um};
  const auto um = [&](double share) { return um_from_mm(at_share(sorted_mm, share)); };
  const double fence = std::max(kSpreads * (um(0.75) - um(0.25)), kLeast_um);
  const double low = std::max(um(0.0), um(0.5) - fence), high = std::min(um(1.0), um(0.5) + fence);
  const double from_wanted = std::max({std::abs(low), std::abs(high), kNarrowest_um});
  const double from_median = std::max({um(0.5) - low, high - um(0.5), kNarrowest_um});
  // A surface that lies far off as a whole would be one flat colour.
  if (from_median < kFarOff * from_wanted)
    return {um(0.5), rounded_up(from_median)};
  return {0.0, rounded_up(from_wanted)};
}

void fill_legend(ColourScale &scale, double per_unit, const std::vector<float> &sorted) {
  const std::vector<Rgb> colours = scale_colours();
  for (int k = 0; k < kStops; ++k) {
    const double t = static_cast<double>(k) / (kStops - 1);
    const double at = scale.span_low + t * (scale.span_high - scale.span_low);
    const auto index = static_cast<std::size_t>(std::lround(at * (kScaleColours - 1)));
    scale.legend.stops.push_back({per_unit * (scale.low + t * (scale.high - scale.low)), colours[index]});
  }
  if (sorted.empty())
    return;
  const double hair = 1e-6 * (scale.high - scale.low);
  const auto below = std::lower_bound(sorted.begin(), sorted.end(), static_cast<float>(scale.low - hair));
  const auto above = std::upper_bound(sorted.begin(), sorted.end(), static_cast<float>(scale.high + hair));
  const auto count = static_cast<double>(sorted.size());
  scale.legend.share_below = static_cast<double>(below - sorted.begin()) / count;
  scale.legend.share_above = static_cast<double>(sorted.end() - above) / count;
}

} // namespace

std::vector<Rgb> scale_colours() {
  std::vector<Rgb> colours;
  for (int k = 0; k < kScaleColours; ++k)
    colours.push_back(residual_colour(2.0 * k / (kScaleColours - 1) - 1.0));
  return colours;
}

std::vector<float> sample_of(const std::vector<float> &values) {
  const std::size_t stride = std::max<std::size_t>(1, values.size() / kMostSamples);
  std::vector<float> sample;
  for (std::size_t k = 0; k < values.size(); k += stride)
    if (std::isfinite(values[k]))
      sample.push_back(values[k]);
  std::sort(sample.begin(), sample.end());
  return sample;
}

ColourScale residual_scale(std::vector<float> samples_mm, const ScaleAsk &ask) {
  std::sort(samples_mm.begin(), samples_mm.end());
  const Span span = residual_span_um(samples_mm);
  ColourScale scale;
  scale.low = mm_from_um(ask.low.value_or(span.middle - span.half));
  scale.high = std::max(mm_from_um(ask.high.value_or(span.middle + span.half)), scale.low + 1e-9);
  scale.legend.title = "off the wanted surface (+ stock left, \u2212 cut too deep)";
  scale.legend.unit = "um";
  fill_legend(scale, 1e3, samples_mm);
  return scale;
}

ColourScale quantity_scale(std::vector<float> samples, const std::string &name, const std::string &unit,
                           const ScaleAsk &ask) {
  std::sort(samples.begin(), samples.end());
  // The far end of the scale is the value that one cell in two hundred passes.
  constexpr double kTop = 0.995, kFarFromZero = 0.6;
  const double least = samples.empty() ? 0.0 : at_share(samples, 1.0 - kTop);
  const double most = samples.empty() ? 1.0 : at_share(samples, kTop);
  ColourScale scale;
  scale.low = ask.low.value_or(least > kFarFromZero * most || least < 0.0 ? least : 0.0);
  scale.high = ask.high.value_or(most > 0.0 && scale.low == 0.0 ? rounded_up(most) : most);
  scale.high = std::max(scale.high, scale.low + std::max(1e-9, 1e-6 * std::abs(scale.low)));
  scale.span_low = 0.5; // the light middle of the residual's colours, then towards their brown end
  scale.legend.title = name;
  scale.legend.unit = unit;
  fill_legend(scale, 1.0, samples);
  return scale;
}

} // namespace asperity
