// Greedy chords: each reaches on as long as every joint passed stays near it.
#include "floor_merge.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

Vec3 begin_of(const FloorStroke &s) {
  return s.descends ? Vec3(s.high, s.z_mm + s.slope * s.length_mm) : Vec3(s.low, s.z_mm);
}

Vec3 end_of(const FloorStroke &s) {
  return s.descends ? Vec3(s.low, s.z_mm) : Vec3(s.high, s.z_mm + s.slope * s.length_mm);
}

Vec2 heading(const FloorStroke &s) { return s.descends ? -s.low_along : s.low_along; }

/// Directions, sideways or upward, that keep a chord near all joints passed so far.
struct Cone {
  double low = -std::numeric_limits<double>::infinity(), high = std::numeric_limits<double>::infinity();
  bool holds(double slope) const { return slope >= low && slope <= high; }
  void narrow(double aside, double ahead, double within) {
    low = std::max(low, (aside - within) / ahead);
    high = std::min(high, (aside + within) / ahead);
  }
};

class Merger {
public:
  Merger(const std::vector<FloorStroke> &strokes, const MergeRule &rule, FloorRuns &runs)
      : strokes_(strokes), rule_(rule), runs_(runs) {
    merged_.reserve(rule.within_mm > 0.0 ? 16 : strokes.size());
  }

  std::vector<FloorStroke> merge() {
    for (std::size_t first = 0; first < strokes_.size();) {
      std::size_t end = reach(first, rule_.within_mm);
      // Sideways and upward distances are limited one by one; together they may be a little too far.
      for (double share = 0.9; end > first + 1 && !is_near(first, end); share *= 0.9)
        end = reach(first, share * rule_.within_mm);
      add(first, end);
      first = end;
    }
    return std::move(merged_);
  }

private:
  bool runs_on(const FloorStroke &a, const FloorStroke &b) const {
    return b.joins_previous && !b.is_arc && b.length_mm > 0.0 && a.cutter == b.cutter &&
           (a.owner == b.owner || rule_.may_mix_owners);
  }

  /// One past the last stroke that a chord from the beginning of `first` can take in.
  std::size_t reach(std::size_t first, double within) const {
    const FloorStroke &stroke = strokes_[first];
    std::size_t end = first + 1;
    if (stroke.is_arc || stroke.length_mm == 0.0 || within <= 0.0)
      return end;
    const Vec3 from = begin_of(stroke);
    const Vec2 ahead = heading(stroke);
    Cone sideways, upward;
    double passed = 0.0;
    std::size_t good = end;
    for (std::size_t i = first; i < strokes_.size(); ++i) {
      if (i > first && !runs_on(strokes_[i - 1], strokes_[i]))
        break;
      const Vec3 d = end_of(strokes_[i]) - from;
      const double on = glm::dot(plan(d), ahead), aside = cross(ahead, plan(d));
      if (!(on > passed))
        break;
      passed = on;
      if (sideways.holds(aside / on) && upward.holds(d.z / on))
        good = i + 1;
      else if (i > first)
        break;
      sideways.narrow(aside, on, within);
      upward.narrow(d.z, on, within);
    }
    return good;
  }

  /// The certificate: every joint lies within the tolerance of the chord, and the chord's ends are joints.
  bool is_near(std::size_t first, std::size_t end) const {
    const Vec3 from = begin_of(strokes_[first]), chord = end_of(strokes_[end - 1]) - from;
    const double square = glm::dot(chord, chord);
    for (std::size_t i = first; i + 1 < end; ++i) {
      const Vec3 d = end_of(strokes_[i]) - from;
      const Vec3 off = d - glm::dot(d, chord) / square * chord;
      if (glm::dot(off, off) > rule_.within_mm * rule_.within_mm)
        return false;
    }
    return true;
  }

  void add(std::size_t first, std::size_t end) {
    merged_.push_back(strokes_[first]);
    if (end == first + 1)
      return;
    FloorStroke &stroke = merged_.back();
    Vec3 from = begin_of(strokes_[first]), to = end_of(strokes_[end - 1]);
    stroke.descends = to.z < from.z;
    if (stroke.descends)
      std::swap(from, to);
    stroke.low = plan(from);
    stroke.high = plan(to);
    stroke.z_mm = from.z;
    stroke.length_mm = glm::distance(stroke.low, stroke.high);
    stroke.low_along = stroke.high_along = (stroke.high - stroke.low) / stroke.length_mm;
    stroke.slope = (to.z - from.z) / stroke.length_mm;
    if (strokes_[first].owner == strokes_[end - 1].owner)
      return;
    stroke.run_first = static_cast<std::uint32_t>(runs_.joint_mm.size());
    stroke.run_count = static_cast<std::uint32_t>(end - first);
    for (std::size_t i = 0; i < end - first; ++i) {
      const FloorStroke &member = strokes_[stroke.descends ? end - 1 - i : first + i];
      const Vec3 upper = stroke.descends ? begin_of(member) : end_of(member);
      runs_.joint_mm.push_back(glm::dot(plan(upper) - stroke.low, stroke.low_along));
      runs_.owner.push_back(member.owner);
    }
  }

  const std::vector<FloorStroke> &strokes_;
  const MergeRule &rule_;
  FloorRuns &runs_;
  std::vector<FloorStroke> merged_;
};

} // namespace

std::vector<FloorStroke> merged_strokes(const std::vector<FloorStroke> &strokes, const MergeRule &rule,
                                        FloorRuns &runs) {
  return Merger(strokes, rule, runs).merge();
}

} // namespace asperity
