// Greedy chords: each reaches on as long as every joint passed stays near it. One that may end beside the
// path lies to both sides of a curve, by as much: with the tolerance e and the curvature k it is sqrt(16 e /
// k) long, where one between joints ends at sqrt(8 e / k).
#include "floor_merge.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

/// Directions, sideways or upward, that keep a chord near all joints passed so far.
struct Cone {
  double low = -std::numeric_limits<double>::infinity(), high = std::numeric_limits<double>::infinity();
  bool holds(double slope) const { return slope >= low && slope <= high; }
  bool is_empty() const { return low > high; }
  double nearest(double slope) const { return std::clamp(slope, low, high); }
  Cone narrowed(double slope, double within) const {
    return {std::max(low, slope - within), std::min(high, slope + within)};
  }
};

/// Of the way from one place to a farther one, how much keeps a quantity that is <= 0 at the first.
double share_kept(double at_first, double farther) {
  return farther <= 0.0 ? 1.0 : at_first / (at_first - farther);
}

/// A chord that ends within a move ends no earlier there: corners stay where they are.
constexpr double kLeastPart = 0.2;
/// A tolerance that was too wide is taken narrower by this at least.
constexpr double kLessAtLeast = 0.99;
/// Chords lie as far aside as they may: what is left is for the sweep's own rounding, a thousandth of 50 nm
/// and a little more.
constexpr double kRoom = 0.997;

} // namespace

/// Directions a chord from one place may take.
struct ChordFan {
  Vec3 from;
  Vec2 ahead;
  Cone sideways{}, upward{};

  /// A place as seen from there: how far ahead, and how far aside and up per mm of that.
  struct Sight {
    double on, per, aside, up; ///< per: 1 / on
  };
  Sight sight(Vec3 place) const {
    const Vec3 d = place - from;
    const double on = glm::dot(plan(d), ahead), per = 1.0 / on;
    return {on, per, cross(ahead, plan(d)) * per, d.z * per};
  }
  bool holds(const Sight &s) const { return sideways.holds(s.aside) && upward.holds(s.up); }
  /// False, and the fan is as before, if no direction were left.
  bool narrow(const Sight &s, double within) {
    const Cone aside = sideways.narrowed(s.aside, within * s.per), up = upward.narrowed(s.up, within * s.per);
    if (aside.is_empty() || up.is_empty())
      return false;
    sideways = aside;
    upward = up;
    return true;
  }
  /// The place itself where a chord may lead there, else the nearest one abreast of it.
  Vec3 nearest(Vec3 place) const {
    const Sight s = sight(place);
    const double aside = sideways.nearest(s.aside), up = upward.nearest(s.up);
    if (aside == s.aside && up == s.up)
      return place;
    return from + s.on * Vec3(ahead + aside * left_of(ahead), up);
  }
  /// How much of the move from a place within reach to one beyond it some direction is left for.
  double share_in_reach(const Sight &near, const Sight &far, double within) const {
    const auto kept = [&](double near_slope, double far_slope) {
      return share_kept(near_slope * near.on - within, far_slope * far.on - within);
    };
    return std::min({kept(near.aside - sideways.high, far.aside - sideways.high),
                     kept(sideways.low - near.aside, sideways.low - far.aside),
                     kept(near.up - upward.high, far.up - upward.high),
                     kept(upward.low - near.up, upward.low - far.up)});
  }
};

void FloorMerger::finish() {
  Vec3 from = joint_.empty() ? Vec3(0.0) : joint_.front();
  for (std::size_t first = 0; first < chain_owner_.size();) {
    double within = rule_.within_mm * (rule_.ends_are_free ? kRoom : 1.0);
    Chord chord = reach(from, first, within);
    // Sideways and upward distances are limited one by one; together they may be a little too far.
    for (double off; chord.last > first && (off = farthest_off(chord)) > rule_.within_mm;
         chord = reach(from, first, within))
      within *= std::min(kLessAtLeast, rule_.within_mm / off);
    push(chord);
    from = chord.to;
    first = chord.ends_within_move ? chord.last : chord.last + 1;
  }
  joint_.clear();
  chain_owner_.clear();
}

/// As far as a chord from near move `first` can reach.
FloorMerger::Chord FloorMerger::reach(Vec3 from, std::size_t first, double within) const {
  const std::size_t last_joint = chain_owner_.size();
  if (first + 1 == last_joint)
    return {from, joint_[last_joint], joint_[last_joint], first, first};
  ChordFan fan{from, glm::normalize(plan(joint_[first + 1] - joint_[first]))};
  std::size_t exact = first + 1, free = first + 1;
  ChordFan::Sight passed{};
  double part = 0.0;
  for (std::size_t i = first + 1; i <= last_joint; ++i) {
    const ChordFan::Sight sight = fan.sight(joint_[i]);
    if (!(sight.on > passed.on))
      break;
    if (fan.holds(sight))
      exact = i;
    else if (!rule_.ends_are_free || i == last_joint)
      break;
    if (!fan.narrow(sight, within)) {
      part = fan.share_in_reach(passed, sight, within);
      break;
    }
    free = i;
    passed = sight;
  }
  const Chord to_joint{from, joint_[exact], joint_[exact], first, exact - 1};
  if (!rule_.ends_are_free || exact == last_joint || (exact == free && part < kLeastPart))
    return to_joint;
  return end_freely(to_joint, fan, free, part);
}

/// Ends the chord some part into the move beyond a joint, else abreast of that joint, if the next can go on
/// from there.
FloorMerger::Chord FloorMerger::end_freely(const Chord &exact, const ChordFan &fan, std::size_t joint,
                                           double part) const {
  const Vec3 near = joint_[joint], far = joint_[joint + 1];
  Chord chord = exact;
  if (part >= kLeastPart) {
    chord.end_on_path = near + part * (far - near);
    chord.to = fan.nearest(chord.end_on_path);
    chord.last = joint;
    chord.ends_within_move = true;
    if (goes_on(chord))
      return chord;
  }
  chord.end_on_path = near;
  chord.to = fan.nearest(near);
  chord.last = joint - 1;
  chord.ends_within_move = false;
  return chord.to == near || goes_on(chord) ? chord : exact;
}

/// Whether the move that follows leads on from where the chord ends, too: moves may be shorter than the
/// tolerance.
bool FloorMerger::goes_on(const Chord &chord) const {
  constexpr double kLeast_mm = 2e-6; // less is standing
  const Vec3 next = joint_[chord.ends_within_move ? chord.last + 1 : chord.last + 2];
  const Vec2 move = plan(next - chord.end_on_path);
  const double length = glm::length(move), on = glm::dot(plan(next - chord.to), move);
  return on >= std::max(0.5 * length, kLeast_mm) * length;
}

/// The certificate: how far any joint lies from the chord, or the chord's end from the path. Where it begins,
/// the chord before says so.
double FloorMerger::farthest_off(const Chord &chord) const {
  const Vec3 way = chord.to - chord.from, miss = chord.to - chord.end_on_path;
  const double per_square = 1.0 / glm::dot(way, way);
  double most2 = glm::dot(miss, miss);
  for (std::size_t i = chord.first + 1; i <= chord.last; ++i) {
    const Vec3 d = joint_[i] - chord.from;
    const Vec3 off = d - std::clamp(glm::dot(d, way) * per_square, 0.0, 1.0) * way;
    most2 = std::max(most2, glm::dot(off, off));
  }
  return std::sqrt(most2);
}

void FloorMerger::push(const Chord &chord) {
  FloorStroke &stroke = strokes_.emplace_back(line_stroke(chord.from, chord.to));
  stroke.owner = chain_owner_[chord.first];
  stroke.cutter = first_.cutter;
  stroke.joins_previous = chord.first > 0 || first_.joins_previous;
  if (chain_owner_[chord.first] != chain_owner_[chord.last])
    keep_members(stroke, chord);
}

void FloorMerger::keep_members(FloorStroke &stroke, const Chord &chord) {
  const std::size_t count = chord.last + 1 - chord.first;
  stroke.run_first = static_cast<std::uint32_t>(runs_.owner.size());
  stroke.run_count = static_cast<std::uint32_t>(count);
  for (std::size_t k = 0; k < count; ++k) {
    const std::size_t member = stroke.descends ? chord.last - k : chord.first + k;
    const Vec3 upper = joint_[stroke.descends ? member : member + 1];
    runs_.joint_mm.push_back(
        std::min(glm::dot(plan(upper) - stroke.low, stroke.low_along), stroke.length_mm));
    runs_.owner.push_back(chain_owner_[member]);
  }
}

} // namespace asperity
