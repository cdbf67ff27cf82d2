// What one tooth does over one slice of the cutter, in closed form.
#include "tooth_integral.h"

#include <algorithm>
#include <utility>

namespace asperity {

/// Below this lag over a slice the difference of integrals loses more digits than a single angle does.
static constexpr double kLeastLag_rad = 1e-5;

Vec3 force_of(const EdgeSums &edge, const ForceCoefficients &k, double feed_per_tooth_mm) {
  const Chip chip(k, feed_per_tooth_mm);
  return {along_feed_N(edge.cos, edge.sin, edge.sin_cos, edge.sin_sin, chip),
          left_of_feed_N(edge.cos, edge.sin, edge.sin_cos, edge.sin_sin, chip),
          k.kac * feed_per_tooth_mm * edge.sin + k.kae * edge.one};
}

double torque_of(const EdgeSums &edge, const ForceCoefficients &k, double feed_per_tooth_mm,
                 double radius_mm) {
  return (k.ktc * feed_per_tooth_mm * edge.sin + k.kte * edge.one) * radius_mm;
}

Immersion cutting_part(const Immersion &arc) {
  const double entry_rad = std::clamp(arc.entry_rad, 0.0, kPi);
  return {entry_rad, std::clamp(arc.exit_rad, entry_rad, kPi)};
}

double lag_rad_per_mm(const ToothGeometry &teeth) { return std::tan(teeth.helix_rad) / teeth.radius_mm; }

ReadySlice::ReadySlice(const ImmersedSlice &slice, double lag_per_mm, const ReadySlice *below)
    : arc_(cutting_part(slice.arc)), length_mm_(slice.length_mm()),
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
  const bool ends_below = below && below->in_contact();
  const bool same_entry = ends_below && below->arc_.entry_rad == arc_.entry_rad;
  const bool same_exit = ends_below && below->arc_.exit_rad == arc_.exit_rad;
  at_entry_ = same_entry ? below->at_entry_ : integral_to(turn_at(arc_.entry_rad));
  at_exit_ = same_exit ? below->at_exit_ : integral_to(turn_at(arc_.exit_rad));

  // Slices touch and often end at the same wall, so half of the sines are known from the slice below.
  const bool touches = below && below->trailing_offset_.rad == -leading_lag_rad;
  leading_offset_ = touches ? below->trailing_offset_ : turn_at(-leading_lag_rad);
  if (straight_)
    return;
  trailing_offset_ = turn_at(-trailing_lag_rad);
  mm_per_rad_ = 1.0 / std::abs(lag_per_mm);
}

ReadySlices::ReadySlices(std::span<const ImmersedSlice> slices, const ToothGeometry &teeth) {
  take(slices, lag_rad_per_mm(teeth), 2.0 * kPi / teeth.flutes);
}

void ReadySlices::take(std::span<const ImmersedSlice> slices, double lag_per_mm, double pitch_rad) {
  pitch_rad_ = pitch_rad;
  slices_.clear();
  slices_.reserve(slices.size()); // each looks back at the one before
  for (const ImmersedSlice &slice : slices)
    slices_.emplace_back(slice, lag_per_mm, slices_.empty() ? nullptr : &slices_.back());
}

} // namespace asperity
