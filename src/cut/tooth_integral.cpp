// One slice of the cutter under one tooth: closed form in phi.
#include "tooth_integral.h"

namespace asperity {

/// Below this lag over a slice the difference of integrals loses more digits than a single angle does.
static constexpr double kLeastLag_rad = 1e-5;

SliceForce::SliceForce(const ForceCoefficients &k, const ImmersedSlice &slice, double lag_per_mm,
                       double feed_per_tooth_mm)
    : k_(k), feed_per_tooth_mm_(feed_per_tooth_mm), arc_(cutting_part(slice.arc)),
      length_mm_(slice.z_high_mm - slice.z_low_mm),
      straight_(std::abs(length_mm_ * lag_per_mm) < kLeastLag_rad) {
  // A right-hand helix leads at the slice's low end, a left-hand one at its high end.
  double leading_lag_rad = slice.z_low_mm * lag_per_mm, trailing_lag_rad = slice.z_high_mm * lag_per_mm;
  if (straight_)
    leading_lag_rad = trailing_lag_rad = (leading_lag_rad + trailing_lag_rad) / 2.0;
  else if (lag_per_mm < 0)
    std::swap(leading_lag_rad, trailing_lag_rad);
  first_tip_rad_ = arc_.entry_rad + leading_lag_rad;
  last_tip_rad_ = arc_.exit_rad + trailing_lag_rad;
  if (!in_contact())
    return;

  leading_lag_ = turn_at(-leading_lag_rad);
  trailing_lag_ = turn_at(-trailing_lag_rad);
  if (!straight_) {
    inverse_lag_mm_ = 1.0 / std::abs(lag_per_mm);
    integral_at_entry_ = edge_force_integral(k, feed_per_tooth_mm, turn_at(arc_.entry_rad));
    integral_at_exit_ = edge_force_integral(k, feed_per_tooth_mm, turn_at(arc_.exit_rad));
  }
}

Vec3 SliceForce::integral_to(const Turn &phi) const {
  if (phi.rad <= arc_.entry_rad)
    return integral_at_entry_;
  if (phi.rad >= arc_.exit_rad)
    return integral_at_exit_;
  return edge_force_integral(k_, feed_per_tooth_mm_, phi);
}

Vec3 SliceForce::at(const Turn &tip) const {
  const Turn leading = sum_of(tip, leading_lag_);
  if (straight_)
    return edge_force_N_per_mm(k_, feed_per_tooth_mm_, leading) * length_mm_;
  return (integral_to(leading) - integral_to(sum_of(tip, trailing_lag_))) * inverse_lag_mm_;
}

} // namespace asperity
