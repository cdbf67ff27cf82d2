// The arc that replaces a corner between two straight moves under path blending.
#pragma once

#include "asperity/shape/curve.h"

#include <optional>

namespace asperity {

/// Arc tangent to both lines that passes `tolerance_mm` from their common corner, or nearer where it would
/// take more than `longest_trim_mm` of a leg. Nothing where the turn is too small to matter or the path turns
/// straight back.
std::optional<Curve> rounding_arc(const Curve &leg_in, const Curve &leg_out, double tolerance_mm,
                                  double longest_trim_mm);

} // namespace asperity
