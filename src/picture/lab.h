// CIE 1976 L*a*b* (ISO/CIE 11664-4, white D65) and sRGB (IEC 61966-2-1), the steps between them.
#pragma once

#include "asperity/picture/image.h"

#include <array>

namespace asperity {

struct Lab {
  double l = 0, a = 0, b = 0;
};

/// Lightness, chroma and hue angle of the same space.
Lab lab_from_lch(double lightness, double chroma, double hue_deg);
/// CIE 1976 colour difference: the plain distance in the space.
double difference(const Lab &p, const Lab &q);

/// Linear light, 0..1 where a screen can show it.
std::array<double, 3> linear_from_lab(const Lab &colour);
Lab lab_from_linear(const std::array<double, 3> &linear);

std::array<double, 3> linear_from_rgb(Rgb colour);
/// Clipped to what a screen can show.
Rgb rgb_from_linear(const std::array<double, 3> &linear);

} // namespace asperity
