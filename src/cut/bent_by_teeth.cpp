#include "bent_by_teeth.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Teeth that only just touch may be counted or not: what they cut is nothing.
constexpr double kTouch = 1e-9;

ASPERITY_WIDE void add_sums(const ReadySlice &slice, const Turns *tips, int count, PlanSums &sums) {
  const double first_rad = slice.first_tip_rad(), last_rad = slice.last_tip_rad();
  for (int tooth = 0; tooth < count; ++tooth) {
    Eight is_in;
#pragma omp simd
    for (std::size_t i = 0; i < kEight; ++i) {
      const double after_first = tips[tooth].rad[i] < first_rad ? 0.0 : 1.0;
      is_in[i] = tips[tooth].rad[i] > last_rad ? 0.0 : after_first;
    }
    slice.add_at(tips[tooth], is_in, sums);
  }
}

} // namespace

WallTips::WallTips(const ToothGeometry &teeth, const Eight &node_mm, double wall_rad)
    : pitch_rad_(2.0 * kPi / teeth.flutes) {
  Eight first{};
  for (std::size_t i = 0; i < kBendNodes; ++i)
    first[i] = wall_rad + node_mm[i] * std::tan(teeth.helix_rad) / teeth.radius_mm;
  least_rad_ = *std::min_element(first.begin(), first.end());
  most_rad_ = *std::max_element(first.begin(), first.end());
  // No tip that touches the cutter's front half below the last node is farther away.
  const double lag_rad = std::abs(node_mm.back() * lag_rad_per_mm(teeth));
  const int most = static_cast<int>(std::ceil((kPi + lag_rad + most_rad_ - least_rad_) / pitch_rad_)) + 1;
  first_tooth_ = -most;
  for (int tooth = -most; tooth <= most; ++tooth) {
    Turns &tips = tips_.emplace_back();
    for (std::size_t i = 0; i < kBendNodes; ++i) {
      const Turn tip = turn_at(first[i] + pitch_rad_ * tooth);
      tips.rad[i] = tip.rad, tips.sin[i] = tip.sin, tips.cos[i] = tip.cos;
    }
  }
}

void WallTips::add_bend(const ReadySlice &slice, const ForceCoefficients &k, double feed_per_tooth_mm,
                        const Eight &compliance_mm_per_N, Eight &bend_mm) const {
  if (!slice.in_contact())
    return;
  const double low = std::ceil((slice.first_tip_rad() - most_rad_) / pitch_rad_ - kTouch);
  const double high = std::floor((slice.last_tip_rad() - least_rad_) / pitch_rad_ + kTouch);
  const int first = std::max(static_cast<int>(low) - first_tooth_, 0);
  const int last = std::min(static_cast<int>(high) - first_tooth_, static_cast<int>(tips_.size()) - 1);
  if (first > last)
    return;
  PlanSums sums{};
  add_sums(slice, tips_.data() + first, last - first + 1, sums);
  const Chip chip(k, feed_per_tooth_mm);
  for (std::size_t i = 0; i < kBendNodes; ++i)
    bend_mm[i] += compliance_mm_per_N[i] *
                  left_of_feed_N(sums.cos[i], sums.sin[i], sums.sin_cos[i], sums.sin_sin[i], chip);
}

} // namespace asperity
