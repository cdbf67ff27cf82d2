// The colours of a residual: two curves through L*a*b*, walked in even steps.
#include "asperity/picture/colour_map.h"

#include "lab.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace asperity {

namespace {

constexpr std::size_t kSteps = 256; ///< per side
using Side = std::array<Rgb, kSteps + 1>;
using Corners = std::array<Lab, 4>;

/// Smooth curve through the corners (Catmull-Rom, ends repeated), u = 0..3.
Lab on_curve(const Corners &p, double u) {
  const int i = std::min(static_cast<int>(u), 2);
  const double t = u - i;
  const auto corner = [&](int k) { return p[static_cast<std::size_t>(std::clamp(k, 0, 3))]; };
  const Lab a = corner(i - 1), b = corner(i), c = corner(i + 1), d = corner(i + 2);
  const auto mix = [t](double w, double x, double y, double z) {
    return x + 0.5 * t * (y - w + t * (2 * w - 5 * x + 4 * y - z + t * (3 * (x - y) + z - w)));
  };
  return {mix(a.l, b.l, c.l, d.l), mix(a.a, b.a, c.a, d.a), mix(a.b, b.b, c.b, d.b)};
}

/// The curve sampled so that neighbouring colours are equally far apart.
Side even_steps(const Corners &corners) {
  constexpr std::size_t kFine = 4096;
  std::array<double, kFine + 1> length{};
  const auto at = [&](std::size_t k) { return on_curve(corners, 3.0 * static_cast<double>(k) / kFine); };
  for (std::size_t k = 1; k <= kFine; ++k)
    length[k] = length[k - 1] + difference(at(k - 1), at(k));
  Side side;
  for (std::size_t step = 0, k = 0; step <= kSteps; ++step) {
    const double wanted = length[kFine] * static_cast<double>(step) / kSteps;
    while (k < kFine && length[k] < wanted)
      ++k;
    side[step] = rgb_from_linear(linear_from_lab(at(k)));
  }
  return side;
}

} // namespace

Rgb residual_colour(double t) {
  // Corners were picked inside what sRGB can show; the tests hold the two curves to that.
  static const Side kDeep = even_steps({lab_from_lch(94, 1, 250), lab_from_lch(75, 24, 250),
                                        lab_from_lch(50, 38, 262), lab_from_lch(22, 33, 280)});
  static const Side kProud = even_steps({lab_from_lch(94, 1, 250), lab_from_lch(79, 38, 76),
                                         lab_from_lch(59, 58, 63), lab_from_lch(36, 48, 52)});
  if (!std::isfinite(t))
    t = std::isnan(t) ? 0.0 : std::copysign(1.0, t);
  const double place = std::min(std::abs(t), 1.0) * kSteps;
  return (t < 0.0 ? kDeep : kProud)[static_cast<std::size_t>(std::lround(place))];
}

Rgb roughness_colour(double t) {
  // Pale straw over rose to deep plum: no hue of the residual's two sides, lightness falling all the way.
  static const Side kRough = even_steps({lab_from_lch(95, 8, 95), lab_from_lch(76, 27, 20),
                                         lab_from_lch(50, 46, 345), lab_from_lch(20, 36, 325)});
  const double place = std::isnan(t) ? 0.0 : std::clamp(t, 0.0, 1.0);
  return kRough[static_cast<std::size_t>(std::lround(place * kSteps))];
}

} // namespace asperity
