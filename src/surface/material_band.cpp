// Geometric floor and material contribution together; walls as printed.
#include "asperity/surface/material_band.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

double combined_ra_um(double ra_um, double other_ra_um) { return std::hypot(ra_um, other_ra_um); }

RaBand ra_band(double geometric_ra_um, RaBand own_um) {
  return {combined_ra_um(geometric_ra_um, own_um.low_um), combined_ra_um(geometric_ra_um, own_um.high_um)};
}

RaBand printed_wall_ra_um(double layer_mm, double lean_rad) {
  constexpr double kLow_um_per_mm = 69, kHigh_um_per_mm = 72;
  const double lean = std::min(std::abs(lean_rad), rad_from_deg(70));
  return {kLow_um_per_mm * layer_mm / std::cos(lean), kHigh_um_per_mm * layer_mm / std::cos(lean)};
}

double printed_bead_ra_um(double layer_mm) {
  constexpr double kSemicircleRaShare = 0.1813029; // Ra over the height of semicircular arcs, derived
  return kSemicircleRaShare * um_from_mm(layer_mm / 2.0);
}

} // namespace asperity
