// Greedy chords: each reaches on as long as every joint passed stays near it.
#include "floor_merge.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

/// Directions, sideways or upward, that keep a chord near all joints passed so far.
struct Cone {
  double low = -std::numeric_limits<double>::infinity(), high = std::numeric_limits<double>::infinity();
  bool holds(double slope) const { return slope >= low && slope <= high; }
  void narrow(double slope, double within) {
    low = std::max(low, slope - within);
    high = std::min(high, slope + within);
  }
};

} // namespace

void FloorMerger::finish() {
  for (std::size_t first = 0; first < chain_owner_.size();) {
    std::size_t end = reach(first, rule_.within_mm);
    // Sideways and upward distances are limited one by one; together they may be a little too far.
    for (double share = 0.9; end > first + 1 && !is_near(first, end); share *= 0.9)
      end = reach(first, share * rule_.within_mm);
    push(first, end);
    first = end;
  }
  joint_.clear();
  chain_owner_.clear();
}

/// The last joint that a chord from joint `first` can reach.
std::size_t FloorMerger::reach(std::size_t first, double within) const {
  std::size_t good = first + 1;
  if (good == chain_owner_.size())
    return good;
  const Vec3 from = joint_[first];
  const Vec2 ahead = glm::normalize(plan(joint_[good] - from));
  Cone sideways, upward;
  double passed = 0.0;
  for (std::size_t i = good; i < joint_.size(); ++i) {
    const Vec3 d = joint_[i] - from;
    const double on = glm::dot(plan(d), ahead);
    if (!(on > passed))
      break;
    passed = on;
    const double per = 1.0 / on, aside = cross(ahead, plan(d)) * per, up = d.z * per;
    if (sideways.holds(aside) && upward.holds(up))
      good = i;
    else if (i > first + 1)
      break;
    sideways.narrow(aside, within * per);
    upward.narrow(up, within * per);
  }
  return good;
}

/// The certificate: every joint lies within the tolerance of the chord, and the chord's ends are joints.
bool FloorMerger::is_near(std::size_t first, std::size_t end) const {
  const Vec3 from = joint_[first], chord = joint_[end] - from;
  const double per_square = 1.0 / glm::dot(chord, chord);
  for (std::size_t i = first + 1; i < end; ++i) {
    const Vec3 d = joint_[i] - from;
    const Vec3 off = d - glm::dot(d, chord) * per_square * chord;
    if (glm::dot(off, off) > rule_.within_mm * rule_.within_mm)
      return false;
  }
  return true;
}

void FloorMerger::push(std::size_t first, std::size_t end) {
  FloorStroke &stroke = strokes_.emplace_back(line_stroke(joint_[first], joint_[end]));
  stroke.owner = chain_owner_[first];
  stroke.cutter = first_.cutter;
  stroke.joins_previous = first > 0 || first_.joins_previous;
  if (chain_owner_[first] != chain_owner_[end - 1])
    keep_members(stroke, first, end);
}

void FloorMerger::keep_members(FloorStroke &stroke, std::size_t first, std::size_t end) {
  stroke.run_first = static_cast<std::uint32_t>(runs_.owner.size());
  stroke.run_count = static_cast<std::uint32_t>(end - first);
  for (std::size_t k = 0; k < end - first; ++k) {
    const std::size_t member = stroke.descends ? end - 1 - k : first + k;
    const Vec3 upper = joint_[stroke.descends ? member : member + 1];
    runs_.joint_mm.push_back(glm::dot(plan(upper) - stroke.low, stroke.low_along));
    runs_.owner.push_back(chain_owner_[member]);
  }
}

} // namespace asperity
