// The tooth's force law integrated over the angle it sweeps: the closed form behind every force of this room.
#pragma once

#include "asperity/base/units.h"
#include "asperity/cut/force.h"

#include <algorithm>
#include <cmath>

namespace asperity {

/// An angle with its sine and cosine.
struct Turn {
  double rad = 0, sin = 0, cos = 1;
};

inline Turn turn_at(double rad) { return {rad, std::sin(rad), std::cos(rad)}; }

/// a + b, its sine and cosine from theirs.
inline Turn sum_of(const Turn &a, const Turn &b) {
  return {a.rad + b.rad, a.sin * b.cos + a.cos * b.sin, a.cos * b.cos - a.sin * b.sin};
}

inline Turn opposite(const Turn &a) { return {-a.rad, -a.sin, a.cos}; }

/// Force per length of edge of one tooth at phi [N/mm]: x along feed, y to the left, z positive down.
inline Vec3 edge_force_N_per_mm(const ForceCoefficients &k, double feed_per_tooth_mm, const Turn &phi) {
  const double chip_mm = feed_per_tooth_mm * phi.sin;
  const double tangential = k.ktc * chip_mm + k.kte;
  const double radial = k.krc * chip_mm + k.kre;
  return {-tangential * phi.cos - radial * phi.sin, tangential * phi.sin - radial * phi.cos,
          k.kac * chip_mm + k.kae};
}

/// Integral of edge_force_N_per_mm over phi, up to a constant [N rad/mm].
inline Vec3 edge_force_integral(const ForceCoefficients &k, double feed_per_tooth_mm, const Turn &phi) {
  const double of_sin_cos = feed_per_tooth_mm * phi.sin * phi.sin / 2.0;
  const double of_sin_squared = feed_per_tooth_mm * (phi.rad - phi.sin * phi.cos) / 2.0;
  return {-k.ktc * of_sin_cos - k.kte * phi.sin - k.krc * of_sin_squared + k.kre * phi.cos,
          k.ktc * of_sin_squared - k.kte * phi.cos - k.krc * of_sin_cos - k.kre * phi.sin,
          -k.kac * feed_per_tooth_mm * phi.cos + k.kae * phi.rad};
}

/// The part of an arc in front of the cutter: behind it, beyond 0..pi, a tooth meets no chip.
inline Immersion cutting_part(const Immersion &arc) {
  const double entry_rad = std::clamp(arc.entry_rad, 0.0, kPi);
  return {entry_rad, std::clamp(arc.exit_rad, entry_rad, kPi)};
}

/// Lag of a tooth per height [rad/mm]; phi(z) = phi(0) - z times this.
inline double lag_rad_per_mm(const ToothGeometry &teeth) {
  return std::tan(teeth.helix_rad) / teeth.radius_mm;
}

/// A slice made ready for many rotor angles.
class SliceForce {
public:
  SliceForce(const ForceCoefficients &k, const ImmersedSlice &slice, double lag_per_mm,
             double feed_per_tooth_mm);

  /// Tip angles [rad] between which a tooth touches the arc somewhere in the slice.
  double first_tip_rad() const { return first_tip_rad_; }
  double last_tip_rad() const { return last_tip_rad_; }
  bool in_contact() const { return length_mm_ > 0 && arc_.span_rad() > 0; }

  /// Force of the tooth whose tip stands at `tip`, first_tip_rad() <= tip.rad <= last_tip_rad() [N].
  Vec3 at(const Turn &tip) const;

private:
  Vec3 integral_to(const Turn &phi) const;

  const ForceCoefficients &k_;
  double feed_per_tooth_mm_;
  Immersion arc_;
  double length_mm_;
  bool straight_;             ///< too little lag over the slice for the quotient: one angle for all of it
  double inverse_lag_mm_ = 0; ///< mm per rad, positive
  Turn leading_lag_, trailing_lag_; ///< minus the lag at the slice's leading and trailing end
  Vec3 integral_at_entry_{0.0}, integral_at_exit_{0.0};
  double first_tip_rad_, last_tip_rad_;
};

} // namespace asperity
