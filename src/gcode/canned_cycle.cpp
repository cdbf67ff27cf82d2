// Drilling, tapping and boring cycles unfolded into plain moves, one hole at a time [NISTIR 6556, 3.5.16].
#include "canned_cycle.h"

#include <algorithm>
#include <cmath>

namespace asperity::gcode {
namespace {

/// G83 comes back to this much above the last bottom: 0.010 inch, from memory.
constexpr double kPeckGap_mm = 0.254;

class HoleWriter {
public:
  HoleWriter(const Hole &hole, std::vector<CycleStep> &steps)
      : hole_(hole), steps_(steps), at_(hole.tip), turn_(hole.turn) {}

  void write();

private:
  void go(MoveKind kind, Vec3 to) {
    at_ = to;
    steps_.push_back({kind, to, 0.0, turn_});
  }
  void go_to_height(MoveKind kind, double height_mm) {
    Vec3 to = at_;
    to[hole_.axis] = height_mm;
    go(kind, to);
  }
  void rapid_to_height(double height_mm) { go_to_height(MoveKind::rapid, height_mm); }
  void feed_to_height(double height_mm) { go_to_height(MoveKind::feed, height_mm); }
  void rapid_beside(Vec3 place) {
    place[hole_.axis] = at_[hole_.axis];
    go(MoveKind::rapid, place);
  }
  void dwell() {
    if (hole_.dwell_s > 0.0)
      steps_.push_back({MoveKind::dwell, at_, hole_.dwell_s, turn_});
  }
  void reverse() {
    turn_ = hole_.turn == SpindleTurn::clockwise ? SpindleTurn::counter_clockwise : SpindleTurn::clockwise;
  }

  void peck();
  void bore_from_behind();

  const Hole &hole_;
  std::vector<CycleStep> &steps_;
  Vec3 at_;
  SpindleTurn turn_;
};

void HoleWriter::peck() {
  const double pecks = peck_count(hole_);
  for (double i = 1.0; i < pecks; i += 1.0) {
    const double depth_mm = hole_.retract_mm - i * hole_.peck_mm;
    feed_to_height(depth_mm);
    rapid_to_height(hole_.retract_mm);
    rapid_to_height(std::min(depth_mm + kPeckGap_mm, hole_.retract_mm));
  }
  feed_to_height(hole_.bottom_mm);
}

/// G87: down beside the hole with the spindle stopped, in, up to K turning, and out the same way.
void HoleWriter::bore_from_behind() {
  rapid_beside(hole_.place + hole_.side_step);
  turn_ = SpindleTurn::off;
  rapid_to_height(hole_.bottom_mm);
  rapid_beside(hole_.place);
  turn_ = hole_.turn;
  feed_to_height(hole_.back_mm);
  feed_to_height(hole_.bottom_mm);
  turn_ = SpindleTurn::off;
  rapid_beside(hole_.place + hole_.side_step);
  rapid_to_height(hole_.clear_mm);
  rapid_beside(hole_.place);
}

void HoleWriter::write() {
  if (at_[hole_.axis] < hole_.retract_mm)
    rapid_to_height(hole_.retract_mm);
  rapid_beside(hole_.place);
  if (hole_.cycle == 870)
    return bore_from_behind();
  rapid_to_height(hole_.retract_mm);
  if (hole_.cycle == 830)
    peck();
  else
    feed_to_height(hole_.bottom_mm);
  switch (hole_.cycle) {
  case 840: // tapping: out at feed, turning back
    reverse();
    return feed_to_height(hole_.clear_mm);
  case 850: // boring: out at feed
    return feed_to_height(hole_.clear_mm);
  case 890:
    dwell();
    return feed_to_height(hole_.clear_mm);
  case 860: // boring: out with the spindle stopped
  case 880: // the same, drawn out by hand
    dwell();
    turn_ = SpindleTurn::off;
    break;
  case 820:
    dwell();
    break;
  default:
    break;
  }
  rapid_to_height(hole_.clear_mm);
}

} // namespace

double peck_count(const Hole &hole) {
  constexpr double kRounding = 1e-9; // a depth of exactly n pecks must not grow one more
  return std::ceil((hole.retract_mm - hole.bottom_mm) / hole.peck_mm - kRounding);
}

void unfold_hole(const Hole &hole, std::vector<CycleStep> &steps) { HoleWriter(hole, steps).write(); }

} // namespace asperity::gcode
