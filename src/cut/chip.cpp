// Feed per tooth, chip thickness, chip thinning, rubbing.
#include "asperity/cut/chip.h"

#include "asperity/base/units.h"
#include "asperity/cut/scallop.h"

#include <algorithm>
#include <cmath>

namespace asperity {

/// h_min = lambda r_edge; lambda 0.14-0.43 in usual micro-cutting [Cheng et al. 2018, introduction].
static constexpr double kLeastChipPerEdgeRadius = 0.3;

double feed_per_tooth_mm(double feed_mm_per_s, double spindle_rpm, int flutes) {
  const double teeth_per_s = rev_per_s_from_rpm(spindle_rpm) * flutes;
  return teeth_per_s > 0 ? feed_mm_per_s / teeth_per_s : 0.0;
}

double thickest_chip_mm(double feed_per_tooth_mm, double radial_depth_mm, double radius_mm) {
  // sin of the arc whose cosine is 1 - ae/r, written without the cancellation at small ae.
  const double depth = std::clamp(radial_depth_mm / radius_mm, 0.0, 1.0);
  return feed_per_tooth_mm * std::sqrt(depth * (2.0 - depth));
}

double mean_chip_mm(double feed_per_tooth_mm, double entry_rad, double exit_rad) {
  // cos a - cos b = 2 sin((a+b)/2) sin((b-a)/2), which keeps its digits on a short arc.
  const double middle = (entry_rad + exit_rad) / 2, half = (exit_rad - entry_rad) / 2;
  const double shortening = half > 0 ? std::sin(half) / half : 1.0;
  return feed_per_tooth_mm * std::sin(middle) * shortening;
}

double least_chip_mm(double edge_radius_um) { return kLeastChipPerEdgeRadius * mm_from_um(edge_radius_um); }

double cusp_height_mm(double pitch_mm, double radius_mm) { return chord_sagitta_mm(radius_mm, pitch_mm); }

} // namespace asperity
