// What one tooth does over one slice of the cutter, in closed form: behind every force of this room.
#pragma once

#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"
#include "asperity/cut/force.h"
#include "turn.h"

#include <cmath>
#include <span>
#include <vector>

namespace asperity {

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

/// Coefficients at one feed.
struct Chip {
  double ktc_f, krc_f, kte, kre;
  Chip(const ForceCoefficients &k, double feed_per_tooth_mm)
      : ktc_f(k.ktc * feed_per_tooth_mm), krc_f(k.krc * feed_per_tooth_mm), kte(k.kte), kre(k.kre) {}
};

/// The two parts in plan of force_of [N].
ASPERITY_INTO_WIDE double along_feed_N(double cos, double sin, double sin_cos, double sin_sin,
                                       const Chip &chip) {
  return -chip.ktc_f * sin_cos - chip.kte * cos - chip.krc_f * sin_sin - chip.kre * sin;
}
ASPERITY_INTO_WIDE double left_of_feed_N(double cos, double sin, double sin_cos, double sin_sin,
                                         const Chip &chip) {
  return chip.ktc_f * sin_sin + chip.kte * sin - chip.krc_f * sin_cos - chip.kre * cos;
}

/// Force of an edge [N]: dF = (k_c f sin(phi) + k_e) dz turned into x along feed, y to the left, z positive
/// down.
Vec3 force_of(const EdgeSums &edge, const ForceCoefficients &k, double feed_per_tooth_mm);

/// What all teeth do over a revolution on average [mm]: of a slice so long, one tooth's sums over its arc.
inline EdgeSums mean_edge(const EdgeSums &over_arc, int flutes, double length_mm) {
  return over_arc * (flutes * length_mm / (2.0 * kPi));
}

/// Torque of an edge [N mm]: dT = (k_tc f sin(phi) + k_te) R dz.
double torque_of(const EdgeSums &edge, const ForceCoefficients &k, double feed_per_tooth_mm,
                 double radius_mm);

/// The part of an arc in front of the cutter: behind it, beyond 0..pi, a tooth meets no chip.
Immersion cutting_part(const Immersion &arc);

/// Lag of a tooth per height [rad/mm]; phi(z) = phi(0) - z times this.
double lag_rad_per_mm(const ToothGeometry &teeth);

/// The four sums that forces in plan need, of eight edges.
struct alignas(64) PlanSums {
  Eight cos, sin, sin_cos, sin_sin;
};

/// A slice made ready for many rotor angles.
class ReadySlice {
public:
  /// `below`, the slice made ready before, lends its sines where they are the same; may be null.
  ReadySlice(const ImmersedSlice &slice, double lag_per_mm, const ReadySlice *below);

  /// Tip angles [rad] between which a tooth touches the arc somewhere in the slice.
  double first_tip_rad() const { return first_tip_rad_; }
  double last_tip_rad() const { return last_tip_rad_; }
  bool in_contact() const { return length_mm_ > 0 && arc_.span_rad() > 0; }
  /// Over phi from end to end of the arc.
  EdgeSums over_arc() const { return at_exit_ - at_entry_; }

  /// Sums over the engaged edge of the tooth whose tip stands at `tip`, first_tip_rad() <= tip.rad <=
  /// last_tip_rad().
  EdgeSums at(const Turn &tip) const;
  /// Adds the same of eight teeth, of those with is_in 1; is_in is 0 for the rest.
  void add_at(const Turns &tips, const Eight &is_in, PlanSums &sums) const;

private:
  EdgeSums integral_within_arc(const Turn &phi) const;
  PlanSums integrals_within_arc(const Turns &phi) const;

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
  ReadySlices() = default;
  ReadySlices(std::span<const ImmersedSlice> slices, const ToothGeometry &teeth);
  /// Others, in the memory of the last ones.
  void take(std::span<const ImmersedSlice> slices, double lag_per_mm, double pitch_rad);

  const ReadySlice &operator[](std::size_t slice) const { return slices_[slice]; }

  /// Force of every slice [N] while tooth 0's tip stands at phi0: of_slice(index, force).
  template <class OfSlice>
  void forces_at(const ForceCoefficients &k, double feed_per_tooth_mm, double phi0_rad,
                 const OfSlice &of_slice) const;

private:
  double pitch_rad_ = 0;
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

ASPERITY_INTO_WIDE PlanSums ReadySlice::integrals_within_arc(const Turns &phi) const {
  const double entry = arc_.entry_rad, exit = arc_.exit_rad;
  const EdgeSums at_entry = at_entry_, at_exit = at_exit_;
  PlanSums sums;
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double rad = phi.rad[i], sin = phi.sin[i], cos = phi.cos[i];
    const double sin_cos = sin * sin / 2.0, sin_sin = (rad - sin * cos) / 2.0;
    sums.cos[i] = rad <= entry ? at_entry.cos : (rad >= exit ? at_exit.cos : sin);
    sums.sin[i] = rad <= entry ? at_entry.sin : (rad >= exit ? at_exit.sin : -cos);
    sums.sin_cos[i] = rad <= entry ? at_entry.sin_cos : (rad >= exit ? at_exit.sin_cos : sin_cos);
    sums.sin_sin[i] = rad <= entry ? at_entry.sin_sin : (rad >= exit ? at_exit.sin_sin : sin_sin);
  }
  return sums;
}

ASPERITY_INTO_WIDE void ReadySlice::add_at(const Turns &tips, const Eight &is_in, PlanSums &sums) const {
  const Turns leading = sums_of(tips, leading_offset_);
  PlanSums edges;
  double mm = length_mm_;
  if (straight_) {
#pragma omp simd
    for (std::size_t i = 0; i < kEight; ++i) {
      edges.cos[i] = leading.cos[i], edges.sin[i] = leading.sin[i];
      edges.sin_cos[i] = leading.sin[i] * leading.cos[i], edges.sin_sin[i] = leading.sin[i] * leading.sin[i];
    }
  } else {
    const PlanSums upper = integrals_within_arc(leading);
    const PlanSums lower = integrals_within_arc(sums_of(tips, trailing_offset_));
#pragma omp simd
    for (std::size_t i = 0; i < kEight; ++i) {
      edges.cos[i] = upper.cos[i] - lower.cos[i], edges.sin[i] = upper.sin[i] - lower.sin[i];
      edges.sin_cos[i] = upper.sin_cos[i] - lower.sin_cos[i];
      edges.sin_sin[i] = upper.sin_sin[i] - lower.sin_sin[i];
    }
    mm = mm_per_rad_;
  }
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double scale = mm * is_in[i];
    sums.cos[i] += edges.cos[i] * scale, sums.sin[i] += edges.sin[i] * scale;
    sums.sin_cos[i] += edges.sin_cos[i] * scale, sums.sin_sin[i] += edges.sin_sin[i] * scale;
  }
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
