// The colours of a residual (blue cut too deep, light grey as wanted, brown stock left) and of roughness.
#pragma once

#include "asperity/picture/image.h"

namespace asperity {

/// t = -1 (deepest) .. 0 (as wanted) .. +1 (most stock left); beyond is clamped, not a number counts as 0.
/// Steps along each side are even in CIE 1976 L*a*b*; lightness falls steadily from the middle to either end,
/// and further on the blue side, so that the ends differ for every kind of colour vision and in grey print.
Rgb residual_colour(double t);

/// t = 0 (smooth, pale) .. 1 (roughest, deep plum); beyond is clamped, not a number counts as 0. Even steps
/// in the same space, lightness falling steadily, so that it reads the same for every colour vision and in
/// grey.
Rgb roughness_colour(double t);

} // namespace asperity
