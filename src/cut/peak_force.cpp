// Largest plan force over a revolution: one tooth period sampled, then twice again around the best angle.
#include "asperity/cut/force.h"

#include "asperity/base/units.h"
#include "tooth_integral.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <vector>

namespace asperity {

static constexpr int kFirstAngles = 24;
/// Odd, so that the middle one is the best angle so far.
static constexpr int kCloserAngles = 7;
static constexpr double kCloserBy = 4.0;

/// Tip angles of one tooth: first, first + step, ...
struct TipAngles {
  double first_rad = 0, step_rad = 0;
  int count = 0;
  double last_rad() const { return first_rad + (count - 1) * step_rad; }
};

struct Peak {
  double force_N = 0, tip_rad = 0;
};

/// Neighbours in height with the very same arc become one slice: a plain wall has the same arc all the way
/// up.
static std::vector<SliceForce> ready_slices(const ForceCoefficients &k, std::span<const ImmersedSlice> slices,
                                            const ToothGeometry &teeth, double feed_per_tooth_mm) {
  const double lag_per_mm = lag_rad_per_mm(teeth);
  std::vector<SliceForce> ready;
  ready.reserve(slices.size());
  for (std::size_t i = 0; i < slices.size();) {
    ImmersedSlice whole = slices[i];
    for (++i; i < slices.size(); ++i) {
      const ImmersedSlice &next = slices[i];
      if (next.z_low_mm != whole.z_high_mm || next.arc.entry_rad != whole.arc.entry_rad ||
          next.arc.exit_rad != whole.arc.exit_rad)
        break;
      whole.z_high_mm = next.z_high_mm;
    }
    const SliceForce slice(k, whole, lag_per_mm, feed_per_tooth_mm);
    if (slice.in_contact())
      ready.push_back(slice);
  }
  return ready;
}

/// Adds one slice's force, all teeth, at each of the angles.
static void add_slice(const SliceForce &slice, const TipAngles &angles, std::span<const Turn> turns,
                      double pitch_rad, std::span<Vec3> force_N) {
  const int first_tooth =
      static_cast<int>(std::ceil((slice.first_tip_rad() - angles.last_rad()) / pitch_rad));
  const int last_tooth = static_cast<int>(std::floor((slice.last_tip_rad() - angles.first_rad) / pitch_rad));
  for (int tooth = first_tooth; tooth <= last_tooth; ++tooth) {
    const Turn ahead = turn_at(tooth * pitch_rad);
    const double begin_rad = angles.first_rad + ahead.rad;
    const int low = static_cast<int>(std::ceil((slice.first_tip_rad() - begin_rad) / angles.step_rad));
    const int high = static_cast<int>(std::floor((slice.last_tip_rad() - begin_rad) / angles.step_rad));
    for (int i = std::max(0, low); i <= std::min(angles.count - 1, high); ++i)
      force_N[static_cast<std::size_t>(i)] += slice.at(sum_of(turns[static_cast<std::size_t>(i)], ahead));
  }
}

static Peak largest_among(const std::vector<SliceForce> &slices, const TipAngles &angles, double pitch_rad) {
  std::array<Turn, kFirstAngles> turns;
  std::array<Vec3, kFirstAngles> force_N;
  const auto count = static_cast<std::size_t>(angles.count);
  for (std::size_t i = 0; i < count; ++i) {
    turns[i] = turn_at(angles.first_rad + static_cast<double>(i) * angles.step_rad);
    force_N[i] = Vec3(0.0);
  }
  for (const SliceForce &slice : slices)
    add_slice(slice, angles, std::span(turns).first(count), pitch_rad, force_N);
  Peak best;
  for (std::size_t i = 0; i < count; ++i) {
    const double plan_N = std::hypot(force_N[i].x, force_N[i].y);
    if (plan_N > best.force_N)
      best = {plan_N, turns[i].rad};
  }
  return best;
}

double peak_force_N(const ForceCoefficients &k, std::span<const ImmersedSlice> slices,
                    const ToothGeometry &teeth, double feed_per_tooth_mm) {
  assert(teeth.flutes > 0 && teeth.radius_mm > 0);
  const std::vector<SliceForce> ready = ready_slices(k, slices, teeth, feed_per_tooth_mm);
  if (ready.empty())
    return 0.0;

  // One period is enough; if a tooth is in contact for less than that, only that stretch.
  const double pitch_rad = 2.0 * kPi / teeth.flutes;
  double first_rad = ready.front().first_tip_rad(), last_rad = ready.front().last_tip_rad();
  for (const SliceForce &slice : ready) {
    first_rad = std::min(first_rad, slice.first_tip_rad());
    last_rad = std::max(last_rad, slice.last_tip_rad());
  }
  const double span_rad = std::min(last_rad - first_rad, pitch_rad);
  TipAngles angles{first_rad, span_rad / (kFirstAngles - 1), kFirstAngles};
  Peak best = largest_among(ready, angles, pitch_rad);

  // Twice closer in, about the best so far.
  for (int closer = 0; closer < 2; ++closer) {
    angles.step_rad /= kCloserBy;
    angles.count = kCloserAngles;
    angles.first_rad = best.tip_rad - (kCloserAngles / 2) * angles.step_rad;
    const Peak found = largest_among(ready, angles, pitch_rad);
    if (found.force_N > best.force_N)
      best = found;
  }
  return best.force_N;
}

} // namespace asperity
