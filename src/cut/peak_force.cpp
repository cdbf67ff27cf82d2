// Largest plan force over a revolution: one tooth period sampled, then twice again around the best angle.
#include "asperity/cut/force.h"

#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"
#include "tooth_integral.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <vector>

namespace asperity {

static constexpr int kLooks = 3;
static constexpr int kFirstAngles = 36;
/// Odd, so that the middle one is the best angle so far.
static constexpr int kCloserAngles = 7;
static constexpr double kCloserBy = 4.0;

/// Tip angles of one tooth: first, first + step, ...
struct TipAngles {
  double first_rad = 0, step_rad = 0;
  int count = 0;
  double last_rad() const { return first_rad + (count - 1) * step_rad; }
  std::size_t vectors() const { return (static_cast<std::size_t>(count) + kEight - 1) / kEight; }
};

static constexpr std::size_t kVectors = (kFirstAngles + kEight - 1) / kEight;
using TipTurns = std::array<Turns, kVectors>;
using EngagedEdges = std::array<PlanSums, kVectors>;

/// Tip angles between which a tooth touches the work anywhere.
struct Contact {
  double first_tip_rad = 0, last_tip_rad = 0;
};

struct Peak {
  double force_N = 0, tip_rad = 0;
};

/// Neighbours in height with the very same arc become one slice: a plain wall has the same arc all the way
/// up.
static std::vector<ReadySlice> ready_slices(std::span<const ImmersedSlice> slices,
                                            const ToothGeometry &teeth) {
  const double lag_per_mm = lag_rad_per_mm(teeth);
  std::vector<ReadySlice> ready;
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
    const ReadySlice slice(whole, lag_per_mm, ready.empty() ? nullptr : &ready.back());
    if (slice.in_contact())
      ready.push_back(slice);
  }
  return ready;
}

static Contact contact_of(const std::vector<ReadySlice> &slices) {
  Contact contact{slices.front().first_tip_rad(), slices.front().last_tip_rad()};
  for (const ReadySlice &slice : slices) {
    contact.first_tip_rad = std::min(contact.first_tip_rad, slice.first_tip_rad());
    contact.last_tip_rad = std::max(contact.last_tip_rad, slice.last_tip_rad());
  }
  return contact;
}

/// Adds the engaged edge of the tooth `ahead` of those whose tip angles are listed.
ASPERITY_INTO_WIDE void add_tooth(const ReadySlice &slice, const TipAngles &angles, const TipTurns &turns,
                                  const Turn &ahead, EngagedEdges &engaged) {
  const double begin_rad = angles.first_rad + ahead.rad;
  const int first = static_cast<int>(std::ceil((slice.first_tip_rad() - begin_rad) / angles.step_rad));
  const int last = static_cast<int>(std::floor((slice.last_tip_rad() - begin_rad) / angles.step_rad));
  const int low = std::max(0, first), high = std::min(angles.count - 1, last);
  if (low > high)
    return;
  constexpr int kWidth = static_cast<int>(kEight);
  for (int vector = low / kWidth; vector <= high / kWidth; ++vector) {
    Eight is_in;
#pragma omp simd
    for (int i = 0; i < kWidth; ++i) {
      const int at = vector * kWidth + i;
      is_in[static_cast<std::size_t>(i)] = (at >= low) & (at <= high) ? 1.0 : 0.0;
    }
    const auto v = static_cast<std::size_t>(vector);
    slice.add_at(sums_of(turns[v], ahead), is_in, engaged[v]);
  }
}

static TipTurns turns_at(const TipAngles &angles) {
  TipTurns turns; // whole vectors: some more behind the last angle
  const Turn step = turn_at(angles.step_rad);
  Turn turn = turn_at(angles.first_rad);
  for (std::size_t i = 0; i < angles.vectors() * kEight; ++i) {
    const std::size_t v = i / kEight, at = i % kEight;
    turns[v].rad[at] = turn.rad, turns[v].sin[at] = turn.sin, turns[v].cos[at] = turn.cos;
    turn = sum_of(turn, step);
  }
  return turns;
}

/// In plan [N], of all teeth; behind the last angle what comes.
using Forces = std::array<Eight, kVectors>;

ASPERITY_WIDE static void find_forces(const std::vector<ReadySlice> &slices, const Contact &contact,
                                      const TipAngles &angles, const TipTurns &turns, double pitch_rad,
                                      const Chip &chip, Forces &forces_N) {
  EngagedEdges engaged;
  for (std::size_t v = 0; v < angles.vectors(); ++v)
    engaged[v] = {};
  const double first_tooth = std::ceil((contact.first_tip_rad - angles.last_rad()) / pitch_rad);
  const double last_tooth = std::floor((contact.last_tip_rad - angles.first_rad) / pitch_rad);
  for (double tooth = first_tooth; tooth <= last_tooth; ++tooth) {
    const Turn ahead = turn_at(tooth * pitch_rad);
    for (const ReadySlice &slice : slices)
      add_tooth(slice, angles, turns, ahead, engaged);
  }
  for (std::size_t v = 0; v < angles.vectors(); ++v) {
    const PlanSums &edge = engaged[v];
#pragma omp simd
    for (std::size_t i = 0; i < kEight; ++i) {
      const double x_N = along_feed_N(edge.cos[i], edge.sin[i], edge.sin_cos[i], edge.sin_sin[i], chip);
      const double y_N = left_of_feed_N(edge.cos[i], edge.sin[i], edge.sin_cos[i], edge.sin_sin[i], chip);
      forces_N[v][i] = std::sqrt(x_N * x_N + y_N * y_N);
    }
  }
}

double peak_force_N(const ForceCoefficients &k, std::span<const ImmersedSlice> slices,
                    const ToothGeometry &teeth, double feed_per_tooth_mm) {
  assert(teeth.flutes > 0 && teeth.radius_mm > 0);
  const std::vector<ReadySlice> ready = ready_slices(slices, teeth);
  if (ready.empty())
    return 0.0;

  // One period is enough; if a tooth is in contact for less than that, only that stretch. Then twice closer
  // in.
  const double pitch_rad = 2.0 * kPi / teeth.flutes;
  const Contact contact = contact_of(ready);
  const double stretch_rad = std::min(contact.last_tip_rad - contact.first_tip_rad, pitch_rad);
  TipAngles angles{contact.first_tip_rad, stretch_rad / (kFirstAngles - 1), kFirstAngles};
  const Chip chip(k, feed_per_tooth_mm);
  Forces forces_N;
  Peak best;
  for (int look = 0; look < kLooks; ++look) {
    find_forces(ready, contact, angles, turns_at(angles), pitch_rad, chip, forces_N);
    for (int i = 0; i < angles.count; ++i) {
      const double force_N =
          forces_N[static_cast<std::size_t>(i) / kEight][static_cast<std::size_t>(i) % kEight];
      if (force_N > best.force_N)
        best = {force_N, angles.first_rad + i * angles.step_rad};
    }
    angles.step_rad /= kCloserBy;
    angles.count = kCloserAngles;
    angles.first_rad = best.tip_rad - (kCloserAngles / 2) * angles.step_rad;
  }
  return best.force_N;
}

} // namespace asperity
