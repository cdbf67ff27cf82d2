// Closed forms of the marks that teeth and passes leave: cusp heights [mm] and what they read as.
#pragma once

#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cmath>

namespace asperity {

/// Arcs of radius r side by side at a pitch f: r - sqrt(r^2 - f^2/4); a pitch of 2r or more leaves r.
ASPERITY_INTO_WIDE double arc_cusp_mm(double radius_mm, double pitch_mm) {
  // r - sqrt(r^2 - f^2/4) multiplied out: keeps its digits where cusps are nanometres.
  if (radius_mm <= 0)
    return 0.0;
  const double half = std::min(std::abs(pitch_mm) / 2.0, radius_mm);
  return half * half / (radius_mm + std::sqrt((radius_mm - half) * (radius_mm + half)));
}
/// The same by parabolas: f^2 / (8 r). Turning, corner-radius floor marks, circle approximation of side
/// milling.
double parabola_cusp_mm(double radius_mm, double pitch_mm);

/// Peripheral milling of a straight wall.
struct SideCut {
  double radius_mm = 0;
  int flutes = 2;
  double feed_per_tooth_mm = 0;
  bool is_climb = true; ///< down milling; false = conventional, up milling
};
/// fz^2 / (8 (R +- n fz / pi)), + conventional. [Martellotti 1941, from memory]
double martellotti_cusp_mm(const SideCut &cut);
/// R (1 - cos q) where R sin q +- (n fz / 2 pi) q = fz / 2. [derived: crossing of neighbouring trochoids]
double trochoid_cusp_mm(const SideCut &cut);
/// Radius of curvature of the tooth path at the finished wall: (R +- n fz / 2 pi)^2 / R. [derived]
double trochoid_radius_mm(const SideCut &cut);

/// Two teeth, one shorter by delta: h0 (1 + delta / 4 h0)^2 up to delta = 4 h0, beyond that 4 h0: the short
/// tooth leaves no mark. h0 = cusp of equal teeth. [derived]
double two_tooth_cusp_mm(double equal_cusp_mm, double shorter_mm);
/// One tooth of n makes the surface: n^2 h0, marks at feed per revolution. [derived]
double single_tooth_cusp_mm(double equal_cusp_mm, int flutes);
/// Sharp corner with end teeth dished by this angle: fz tan(dish).
double dish_cusp_mm(double feed_mm, double dish_rad);

/// Parabolic cusps of height h, sharp peaks up: Ra = 4 h / (9 sqrt 3), Rq = 2 h / (3 sqrt 5). [derived]
double cusp_ra_mm(double cusp_mm);
double cusp_rq_mm(double cusp_mm);
/// Ra of rounded-tool marks: f^2 / (18 sqrt 3 r).
double rounded_tool_ra_mm(double radius_mm, double feed_mm);
/// The shop form f^2 / (32 r), which is Rt / 4 and 2.6 % low; kept to check printed examples.
double shop_ra_mm(double radius_mm, double feed_mm);

/// A ball's two-way pattern by paraboloids: tooth marks `feed` apart in rows `stepover` apart.
struct BallPattern {
  double radius_mm = 0, stepover_mm = 0, feed_mm = 0;
};
struct PatternHeights {
  double sa_mm = 0, sq_mm = 0, sz_mm = 0;
};
/// Marks of all rows side by side. [derived]
PatternHeights square_ball_pattern(const BallPattern &pattern);
/// Every other row shifted by half a feed. [derived; Sa by a sum over strips, to 1e-6]
PatternHeights staggered_ball_pattern(const BallPattern &pattern);

/// Parabolic cusps of height 1 after the Gaussian filter, against pitch / cutoff: each Fourier term k of the
/// cusp keeps 1 - 2^-((k cutoff / pitch)^2). [derived]
struct FilteredCusp {
  double ra = 0, rq = 0, rz = 0, rsk = 0;
};
FilteredCusp filtered_cusp(double pitch_over_cutoff);

} // namespace asperity
