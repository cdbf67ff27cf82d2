// Breaks the bent cutter's path into strokes and finds which cells each stroke can leave to its neighbours.
#include "floor_stroke.h"

#include "asperity/base/units.h"

#include "floor_flank.h"
#include "floor_merge.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace asperity {
namespace {

/// A tip that moves less than this in plan stands or plunges [mm].
constexpr double kStanding_mm = 1e-6;
/// Arcs with a changing offset are replaced by plain arcs this near [mm].
constexpr double kFit_mm = 1e-7;
/// Arcs in upright planes are replaced by chords this near [mm].
constexpr double kChord_mm = 1e-5;
/// Joined pieces meet within this; a wrong flag is not believed [mm].
constexpr double kJoined_mm = 1e-9;
constexpr double kLargestSweep_rad = 0.25 * kPi;
/// At sharper turns neighbours do not share out their cells.
constexpr double kLeastCosine = 0.5;

Vec3 offset_of(const PackedOffset &offset) {
  const Vec2 p = 0.5 * (offset.left(0) + offset.right(0));
  return {p.x, p.y, offset.axial_mm()};
}

/// The bent tip's path: the commanded curve and an offset that changes evenly.
struct BentPath {
  Curve curve;
  Vec3 begin_offset, end_offset;

  BentPath(const SweptPath &path, const SweptPiece &piece)
      : curve(path.curve(piece)), begin_offset(offset_of(path.begin_offset(piece))),
        end_offset(offset_of(path.end_offset(piece))) {}
  Vec3 point(double u) const {
    const Vec3 p = u == 0.0 ? curve.begin : u == 1.0 ? curve.end : curve.point(u);
    return p + begin_offset + u * (end_offset - begin_offset);
  }
  bool drifts_in_plan() const { return plan(begin_offset) != plan(end_offset); }
};

/// Tangent of the arc at angle a past its low end.
Vec2 arc_tangent(const FloorStroke &arc, Vec2 end) {
  return arc.turn * left_of((end - arc.centre) / arc.radius_mm);
}

/// Collects the strokes of one piece after the other.
class StrokeList {
public:
  StrokeList(const SweptPath &path, std::size_t begin, std::size_t end, const MergeRule &rule,
             FloorRuns &runs)
      : path_(path), merger_(rule, strokes_, runs) {
    if (begin > 0) {
      const SweptPiece &before = path.pieces[begin - 1];
      end_ = before.end + offset(before.end_offset);
      cutter_ = before.cutter;
    }
    for (std::size_t i = begin; i < end; ++i)
      add(path.pieces[i]);
    merger_.finish();
  }
  std::vector<FloorStroke> take() { return std::move(strokes_); }

private:
  void add(const SweptPiece &piece) {
    const Vec3 begin = piece.begin + offset(piece.begin_offset), end = piece.end + offset(piece.end_offset);
    const Vec3 gap = begin - end_;
    joined_ =
        piece.joins_previous && cutter_ == piece.cutter && glm::dot(gap, gap) <= kJoined_mm * kJoined_mm;
    piece_ = &piece;
    cutter_ = piece.cutter;
    end_ = end;
    if (piece.is_line())
      return add_line(begin, end);
    const BentPath path(path_, piece);
    if (path.curve.is_plan_arc())
      add_plan_arc(path);
    else
      add_chords(path);
  }

  /// Neighbours mostly share theirs.
  Vec3 offset(std::uint32_t index) {
    if (index != offset_index_) {
      offset_index_ = index;
      offset_ = offset_of(path_.offsets[index]);
    }
    return offset_;
  }

  void add_line(Vec3 begin, Vec3 end) {
    const Vec2 d = plan(end - begin);
    if (glm::dot(d, d) < kStanding_mm * kStanding_mm)
      return push(line_stroke(begin, end));
    merger_.add({begin, end, piece_->owner, piece_->cutter, joined_});
    joined_ = true;
  }

  void add_plan_arc(const BentPath &path) {
    const Curve &curve = path.curve;
    const int parts =
        static_cast<int>(std::ceil(std::abs(curve.sweep_rad) / kLargestSweep_rad * (1.0 - 1e-12)));
    for (int i = 0; i < parts; ++i) {
      const double u0 = double(i) / parts, u1 = double(i + 1) / parts;
      if (path.drifts_in_plan())
        add_fitted(path, u0, u1, 0);
      else
        add_arc(path.point(u0), path.point(u1), plan(curve.centre) + plan(path.begin_offset), curve.radius_mm,
                curve.sweep_rad / parts * (cross(plan(curve.axis_x), plan(curve.axis_y)) > 0.0 ? 1.0 : -1.0));
    }
  }

  /// The plain arc through begin, middle and end of a stretch, or halves of it until that is near enough.
  void add_fitted(const BentPath &path, double u0, double u1, int depth) {
    const Vec3 begin = path.point(u0), middle = path.point(0.5 * (u0 + u1)), end = path.point(u1);
    const Vec2 b = plan(middle - begin), c = plan(end - begin);
    const double chord = glm::length(c), twice = 2.0 * cross(b, c);
    // cross(b, c) is the sagitta times the chord.
    if (chord < kStanding_mm || std::abs(twice) < 0.2 * kFit_mm * chord)
      return add_line(begin, end);
    const double bb = glm::dot(b, b), cc = glm::dot(c, c);
    const Vec2 to_centre = Vec2(c.y * bb - b.y * cc, b.x * cc - c.x * bb) / twice;
    const Vec2 from_begin = -to_centre, from_end = c - to_centre;
    const double radius = glm::length(to_centre);
    const double sweep = std::atan2(cross(from_begin, from_end), glm::dot(from_begin, from_end));
    const double slope = std::abs(end.z - begin.z) / (radius * std::abs(sweep));
    double worst = 0.0;
    for (const double part : {0.25, 0.75}) {
      const Vec2 spoke = plan(path.point(u0 + part * (u1 - u0)) - begin) - to_centre;
      const double turned = std::atan2(cross(from_begin, spoke), glm::dot(from_begin, spoke));
      worst = std::max(worst, std::abs(glm::length(spoke) - radius) +
                                  slope * radius * std::abs(turned - part * sweep));
    }
    if (worst > kFit_mm && depth < 24) {
      add_fitted(path, u0, 0.5 * (u0 + u1), depth + 1);
      add_fitted(path, 0.5 * (u0 + u1), u1, depth + 1);
    } else {
      add_arc(begin, end, plan(begin) + to_centre, radius, sweep);
    }
  }

  void add_arc(Vec3 begin, Vec3 end, Vec2 centre, double radius, double sweep) {
    if (radius * std::abs(sweep) < kStanding_mm || radius < kStanding_mm)
      return add_line(begin, end);
    FloorStroke stroke;
    stroke.descends = end.z < begin.z;
    stroke.turn = (sweep > 0.0) != stroke.descends ? 1.0 : -1.0;
    if (stroke.descends)
      std::swap(begin, end);
    stroke.is_arc = true;
    stroke.centre = centre;
    stroke.radius_mm = radius;
    stroke.sweep_rad = std::abs(sweep);
    stroke.low = plan(begin);
    stroke.high = plan(end);
    stroke.low_along = arc_tangent(stroke, stroke.low);
    stroke.high_along = arc_tangent(stroke, stroke.high);
    stroke.length_mm = radius * std::abs(sweep);
    stroke.z_mm = begin.z;
    stroke.slope = (end.z - begin.z) / stroke.length_mm;
    stroke.stretch = std::sqrt(1.0 + stroke.slope * stroke.slope);
    push(stroke);
  }

  /// Sagitta of a chord over the angle a: r a^2 / 8 (derived: r (1 - cos(a / 2))).
  void add_chords(const BentPath &path) {
    const double step = std::sqrt(8.0 * kChord_mm / std::max(path.curve.radius_mm, kStanding_mm));
    const int parts = std::max(1, static_cast<int>(std::ceil(std::abs(path.curve.sweep_rad) / step)));
    for (int i = 0; i < parts; ++i)
      add_line(path.point(double(i) / parts), path.point(double(i + 1) / parts));
  }

  void push(const FloorStroke &found) {
    merger_.finish();
    FloorStroke &stroke = strokes_.emplace_back(found);
    stroke.joins_previous = joined_;
    stroke.owner = piece_->owner;
    stroke.cutter = piece_->cutter;
    joined_ = true;
  }

  const SweptPath &path_;
  std::vector<FloorStroke> strokes_;
  FloorMerger merger_;
  const SweptPiece *piece_ = nullptr;
  bool joined_ = false;
  int cutter_ = -1; ///< of the piece before; none before the first
  Vec3 end_{0.0};
  std::uint32_t offset_index_ = std::numeric_limits<std::uint32_t>::max();
  Vec3 offset_{0.0};
};

/// On an arc smaller than the cutter a cell may be reached from two sides; only others are clipped.
bool can_be_clipped(const FloorStroke &stroke, const Flank &flank) {
  return stroke.length_mm > 0.0 && (!stroke.is_arc || stroke.radius_mm > flank.reach * (1.0 + 1e-9));
}

} // namespace

/// At a joint, a cell is left to the neighbour when this stroke is lowest over it at the joint itself, which
/// the neighbour contains too. Towards the high end that is certain beyond `farthest_shift`, towards the low
/// end at once; the flat of the tip is added so that equal depths are still seen by every stroke that reaches
/// them. The pads of the earlier stroke also cover the wedge outside a turn, so that no cell is left by both.
/// Where the path rises or falls through the joint, the upper stroke's low end meets the lower one's high
/// end: the lower one then keeps as far as either's contacts lag, so that the upper one need not keep any of
/// these.
void clip_at_joint(FloorStroke &before, FloorStroke &after, const Flank &flank) {
  constexpr double kRounding_mm = 1e-9;
  const double flat = std::max(flank.flat, 0.0) + kRounding_mm;
  double after_pad = std::numeric_limits<double>::infinity();
  if (can_be_clipped(after, flank)) {
    after_pad = flat + (after.descends ? flank.farthest_shift(after.slope) : 0.0);
    (after.descends ? after.clip_high_mm : after.clip_low_mm) = after_pad;
  }
  if (!can_be_clipped(before, flank))
    return;
  double before_pad = flat + (before.descends ? 0.0 : flank.farthest_shift(before.slope));
  if (std::isfinite(after_pad)) {
    const Vec2 out = before.descends ? -before.low_along : before.high_along;
    const Vec2 in = after.descends ? -after.high_along : after.low_along;
    const double cosine = glm::dot(out, in), sine = std::abs(cross(out, in));
    if (cosine < kLeastCosine)
      return;
    before_pad = std::max(before_pad, (flank.reach * sine - after_pad) / cosine + kRounding_mm);
    if (before.descends == after.descends) {
      FloorStroke &upper = before.descends ? before : after;
      double &lower_pad = before.descends ? after.clip_high_mm : before_pad;
      upper.low_lag = upper.slope / upper.stretch;
      lower_pad = std::max(lower_pad,
                           flat + flank.farthest_shift(upper.slope) + flank.reach * glm::distance(out, in));
    }
  }
  (before.descends ? before.clip_low_mm : before.clip_high_mm) = before_pad;
}

double FloorStroke::distance_mm(Vec2 p) const {
  const double s = glm::dot(p - low, low_along);
  if (!is_arc)
    return glm::distance(p, low + std::clamp(s, 0.0, length_mm) * low_along);
  const Vec2 spoke = p - centre;
  const bool spans = turn * cross(low - centre, spoke) >= 0.0 && turn * cross(spoke, high - centre) >= 0.0;
  return spans ? std::abs(glm::length(spoke) - radius_mm)
               : std::min(glm::distance(p, low), glm::distance(p, high));
}

void FloorStroke::box(double reach_mm, Vec2 &low_corner, Vec2 &high_corner) const {
  if (is_arc) {
    // The arc's bulge beyond its ends is at most its sagitta.
    const double bulge = radius_mm * (1.0 - std::cos(0.5 * sweep_rad));
    low_corner = glm::min(low, high) - Vec2(reach_mm + bulge);
    high_corner = glm::max(low, high) + Vec2(reach_mm + bulge);
    return;
  }
  const Vec2 across = reach_mm * glm::abs(left_of(low_along));
  const Vec2 first = low - std::min(clip_low_mm, reach_mm) * low_along;
  const Vec2 last = high + std::min(clip_high_mm, reach_mm) * low_along;
  low_corner = glm::min(first, last) - across;
  high_corner = glm::max(first, last) + across;
}

FloorStroke line_stroke(Vec3 begin, Vec3 end) {
  FloorStroke stroke;
  stroke.descends = end.z < begin.z;
  if (stroke.descends)
    std::swap(begin, end);
  stroke.low = plan(begin);
  stroke.z_mm = begin.z;
  stroke.length_mm = glm::distance(plan(begin), plan(end));
  stroke.high = plan(end);
  if (stroke.length_mm < kStanding_mm) {
    stroke.length_mm = 0.0;
    stroke.high = stroke.low;
  } else {
    stroke.low_along = stroke.high_along = (stroke.high - stroke.low) / stroke.length_mm;
    stroke.slope = (end.z - begin.z) / stroke.length_mm;
    stroke.stretch = std::sqrt(1.0 + stroke.slope * stroke.slope);
  }
  return stroke;
}

std::vector<FloorStroke> floor_strokes(const SweptPath &path, std::size_t begin, std::size_t end,
                                       const MergeRule &rule, FloorRuns &runs) {
  return StrokeList(path, begin, end, rule, runs).take();
}

} // namespace asperity
