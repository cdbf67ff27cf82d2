// Joined straight moves that run on nearly in one line become one stroke; who owned which part is kept.
#pragma once

#include "floor_stroke.h"

#include <algorithm>

namespace asperity {

/// Members of merged strokes, each from its low end up. A move in which one stroke ends and the next begins
/// is a member of both.
struct FloorRuns {
  std::vector<double> joint_mm; ///< distance from the merged stroke's low end at which a member ends
  std::vector<std::uint32_t> owner;
};

struct MergeRule {
  /// No point of the path is moved farther than this in space, so no surface along its own normal either
  /// [mm].
  double within_mm = 0.0;
  /// Owners rise along the path, so that strokes of several owners still sort by owner.
  bool may_mix_owners = false;
  /// Chords may end anywhere within the tolerance of the path, which lets them reach sqrt(2) farther on a
  /// curve; else they end in joints. A straight run ends in its joints, what cannot run on in its last one.
  bool ends_are_free = false;
};

/// How many of a run's first `last` joints lie at or before a place; `per_mm` is how dense they mostly are.
inline std::size_t joints_before(const double *joint, std::size_t last, double per_mm, double place_mm) {
  constexpr std::size_t kNear = 8;
  // Moves are often equally long.
  const auto guess = static_cast<std::size_t>(std::clamp(place_mm * per_mm, 0.0, double(last)));
  const std::size_t low = guess < kNear ? 0 : guess - kNear, high = std::min(last, guess + kNear);
  if ((low > 0 && joint[low] > place_mm) || (high < last && joint[high] <= place_mm))
    return std::size_t(std::upper_bound(joint, joint + last, place_mm) - joint);
  std::size_t at = guess;
  while (at > low && joint[at - 1] > place_mm)
    --at;
  while (at < high && joint[at] <= place_mm)
    ++at;
  return at;
}

struct ChordFan;

/// Takes moves in the order of the path and appends strokes.
class FloorMerger {
public:
  FloorMerger(const MergeRule &rule, std::vector<FloorStroke> &strokes, FloorRuns &runs)
      : rule_(rule), strokes_(strokes), runs_(runs) {}

  struct Move {
    Vec3 begin, end; ///< apart in plan
    std::uint32_t owner;
    std::uint16_t cutter;
    bool joins_previous;
  };
  void add(const Move &move) {
    if (chain_owner_.empty() || !runs_on(move)) {
      finish();
      joint_.push_back(move.begin);
      first_ = move;
    }
    joint_.push_back(move.end);
    chain_owner_.push_back(move.owner);
  }
  /// What was added so far becomes strokes.
  void finish();

private:
  /// From anywhere within the tolerance of the path to anywhere within it.
  struct Chord {
    Vec3 from, to;
    Vec3 end_on_path;              ///< the place of the path that `to` stands for
    std::size_t first, last;       ///< moves it begins and ends in
    bool ends_within_move = false; ///< so that the next chord begins in the same move
  };
  bool runs_on(const Move &move) const {
    return rule_.within_mm > 0.0 && move.joins_previous && move.cutter == first_.cutter &&
           (rule_.may_mix_owners || move.owner == first_.owner);
  }
  Chord reach(Vec3 from, std::size_t first, double within) const;
  Chord end_freely(const Chord &exact, const ChordFan &fan, std::size_t joint, double part) const;
  bool goes_on(const Chord &chord) const;
  double farthest_off(const Chord &chord) const;
  void push(const Chord &chord);
  void keep_members(FloorStroke &stroke, const Chord &chord);

  MergeRule rule_;
  std::vector<FloorStroke> &strokes_;
  FloorRuns &runs_;
  Move first_{}; ///< of the chain
  std::vector<Vec3> joint_;
  std::vector<std::uint32_t> chain_owner_; ///< of the move up to the next joint
};

} // namespace asperity
