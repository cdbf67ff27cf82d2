// Which values the colours of a scale span, chosen so that a few far values do not wash it out.
#pragma once

#include "asperity/render/draw_request.h"

#include <optional>
#include <vector>

namespace asperity {

inline constexpr int kScaleColours = 513; ///< an odd number has a middle

/// residual_colour over -1 .. +1.
std::vector<Rgb> scale_colours();

struct ColourScale {
  double low = 0, high = 1;             ///< in the values' own unit
  double span_low = 0.0, span_high = 1; ///< part of scale_colours that low .. high takes
  Legend legend;
};

struct ScaleAsk {
  std::optional<double> low, high; ///< in the legend's unit
};

/// Evenly picked values of one chart, sorted; NaN left out.
std::vector<float> sample_of(const std::vector<float> &values);

/// samples_mm: residuals of cut cells. About zero, or about the median when all of it lies far to one side.
ColourScale residual_scale(std::vector<float> samples_mm, const ScaleAsk &ask);
/// From zero (or the least value, if that is far from zero) up; light to dark.
ColourScale quantity_scale(std::vector<float> samples, const std::string &name, const std::string &unit,
                           const ScaleAsk &ask);

} // namespace asperity
