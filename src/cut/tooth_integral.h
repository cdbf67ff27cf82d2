// What one tooth does over one slice of the cutter, in closed form: behind every force of this room.
#pragma once

#include "asperity/cut/force.h"

#include <cmath>
#include <span>
#include <vector>

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

/// 1, cos, sin, sin cos and sin^2 of phi summed over an edge [mm], or over phi [rad]. The edge forces are
/// linear in these five, h being f sin(phi), so sums over slices and teeth need no coefficients.
struct EdgeSums {
  double one = 0, cos = 0, sin = 0, sin_cos = 0, sin_sin = 0;

  EdgeSums &operator+=(const EdgeSums &b) {
    one += b.one, cos += b.cos, sin += b.sin, sin_cos += b.sin_cos, sin_sin += b.sin_sin;
    return *this;
  }
};

inline EdgeSums operator-(const EdgeSums &a, const EdgeSums &b) {
  return {a.one - b.one, a.cos - b.cos, a.sin - b.sin, a.sin_cos - b.sin_cos, a.sin_sin - b.sin_sin};
}
inline EdgeSums operator*(const EdgeSums &a, double scale) {
  return {a.one * scale, a.cos * scale, a.sin * scale, a.sin_cos * scale, a.sin_sin * scale};
}

/// The five integrated over phi, up to a constant.
inline EdgeSums integral_to(const Turn &phi) {
  return {phi.rad, phi.sin, -phi.cos, phi.sin * phi.sin / 2.0, (phi.rad - phi.sin * phi.cos) / 2.0};
}

/// Force of an edge [N]: dF = (k_c f sin(phi) + k_e) dz turned into x along feed, y to the left, z positive
/// down.
Vec3 force_of(const EdgeSums &edge, const ForceCoefficients &k, double feed_per_tooth_mm);

/// The part of an arc in front of the cutter: behind it, beyond 0..pi, a tooth meets no chip.
Immersion cutting_part(const Immersion &arc);

/// Lag of a tooth per height [rad/mm]; phi(z) = phi(0) - z times this.
double lag_rad_per_mm(const ToothGeometry &teeth);

/// A slice made ready for many rotor angles.
class ReadySlice {
public:
  /// `below`, the slice made ready before, lends its sines where they are the same; may be null.
  ReadySlice(const ImmersedSlice &slice, double lag_per_mm, const ReadySlice *below);

  /// Tip angles [rad] between which a tooth touches the arc somewhere in the slice.
  double first_tip_rad() const { return first_tip_rad_; }
  double last_tip_rad() const { return last_tip_rad_; }
  bool in_contact() const { return length_mm_ > 0 && arc_.span_rad() > 0; }

  /// Sums over the engaged edge of the tooth whose tip stands at `tip`, first_tip_rad() <= tip.rad <=
  /// last_tip_rad().
  EdgeSums at(const Turn &tip) const;

private:
  EdgeSums integral_within_arc(const Turn &phi) const;

  Immersion arc_;
  double length_mm_;
  bool straight_;         ///< too little lag over the slice for the quotient: one angle for all of it
  double mm_per_rad_ = 0; ///< edge height that passes an angle, positive
  Turn leading_offset_, trailing_offset_; ///< from the tip to the slice's leading and trailing end
  EdgeSums at_entry_, at_exit_;           ///< the integral at the ends of the arc
  double first_tip_rad_, last_tip_rad_;
};

/// Slices made ready once for many rotor positions of one feed.
class ReadySlices {
public:
  ReadySlices(std::span<const ImmersedSlice> slices, const ToothGeometry &teeth);

  /// Force of every slice [N] while tooth 0's tip stands at phi0: of_slice(index, force).
  template <class OfSlice>
  void forces_at(const ForceCoefficients &k, double feed_per_tooth_mm, double phi0_rad,
                 const OfSlice &of_slice) const;

private:
  double pitch_rad_;
  std::vector<ReadySlice> slices_;
};

template <class OfSlice>
void ReadySlices::forces_at(const ForceCoefficients &k, double feed_per_tooth_mm, double phi0_rad,
                            const OfSlice &of_slice) const {
  Turn tip = turn_at(phi0_rad);
  for (std::size_t i = 0; i < slices_.size(); ++i) {
    const ReadySlice &slice = slices_[i];
    EdgeSums engaged;
    if (slice.in_contact()) {
      // The teeth stand a pitch apart, so those that touch this slice are counted off directly.
      double tip_rad = phi0_rad + pitch_rad_ * std::ceil((slice.first_tip_rad() - phi0_rad) / pitch_rad_);
      for (; tip_rad <= slice.last_tip_rad(); tip_rad += pitch_rad_) {
        if (tip.rad != tip_rad)
          tip = turn_at(tip_rad);
        engaged += slice.at(tip);
      }
    }
    of_slice(i, force_of(engaged, k, feed_per_tooth_mm));
  }
}

inline EdgeSums ReadySlice::integral_within_arc(const Turn &phi) const {
  if (phi.rad <= arc_.entry_rad)
    return at_entry_;
  if (phi.rad >= arc_.exit_rad)
    return at_exit_;
  return integral_to(phi);
}

inline EdgeSums ReadySlice::at(const Turn &tip) const {
  const Turn leading = sum_of(tip, leading_offset_);
  if (straight_)
    return EdgeSums{1.0, leading.cos, leading.sin, leading.sin * leading.cos, leading.sin * leading.sin} *
           length_mm_;
  const Turn trailing = sum_of(tip, trailing_offset_);
  return (integral_within_arc(leading) - integral_within_arc(trailing)) * mm_per_rad_;
}

} // namespace asperity
