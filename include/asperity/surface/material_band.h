// Roughness as a band: the geometric floor together with what the material adds by itself.
#pragma once

namespace asperity {

struct RaBand {
  double low_um = 0, high_um = 0;
};

/// Independent contributions: sqrt(a^2 + b^2). [from memory; holds exactly for Rq of uncorrelated profiles]
double combined_ra_um(double ra_um, double other_ra_um);
/// The geometric floor with the material's own low and high contribution.
RaBand ra_band(double geometric_ra_um, RaBand own_um);

/// Side wall of a printed blank, lean from the vertical: (69..72) t / cos(lean), t in mm. Beyond 70 degrees
/// the fit no longer holds and the value at 70 is given. [Pandey 2003, from memory]
RaBand printed_wall_ra_um(double layer_mm, double lean_rad);
/// Upper bound of a wall of half-round beads, one a layer: 0.1813 of the bead's radius t/2. [derived: Ra of
/// semicircular arcs]
double printed_bead_ra_um(double layer_mm);

} // namespace asperity
