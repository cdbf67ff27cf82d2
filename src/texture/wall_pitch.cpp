// Distance between tooth marks on a wall at programmed feed.
#include "wall_marks.h"

#include "asperity/base/units.h"

#include <cmath>

namespace asperity {

namespace {

/// A pass whose cutter stays farther off the wall than this leaves no mark on what remains [mm].
constexpr double kOff_mm = 0.1;

/// The outline element nearest to p.
const OutlineElement &nearest_element(const Outline &outline, Vec2 p) {
  const OutlineElement *nearest = &outline.elements().front();
  for (const OutlineElement &element : outline.elements())
    if (element.distance_mm(p) < nearest->distance_mm(p))
      nearest = &element;
  return *nearest;
}

bool touches(const WallChart &chart, const SweptCutter &cutter, Vec3 tip) {
  if (tip.z > chart.z_mm.back() || tip.z + cutter.flute_length_mm < chart.z_mm.front())
    return false;
  const double depth = chart.outline.depth_mm(plan(tip));
  const double off_mm = (chart.inside ? depth : -depth) - cutter.profile.radius_mm();
  return std::abs(off_mm) <= kOff_mm;
}

} // namespace

double mark_pitch_mm(const WallChart &chart, const TextureSource &source) {
  WallMarks marks(source);
  double least = 0;
  for (const SweptPiece &piece : source.swept.pieces) {
    const PathPiece &timed = source.path.pieces[piece.owner];
    const SweptCutter &cutter = source.swept.cutters[piece.cutter];
    const Curve curve = source.swept.curve(piece);
    const Vec3 tip = curve.point(0.5);
    const Vec2 motion = plan(curve.velocity(0.5));
    if (timed.kind != MoveKind::feed || motion == Vec2(0.0) || !touches(chart, cutter, tip))
      continue;
    Moment moment = moment_at(timed, 0.5);
    moment.plan_speed_mm_per_s = timed.feed_mm_per_s * glm::length(motion) / glm::length(curve.velocity(0.5));
    const OutlineElement &element = nearest_element(chart.outline, plan(tip));
    const double bend = element.is_arc() ? 1.0 / element.radius_mm() : 0.0;
    const double wall_per_mm = (element.sweep_rad > 0) != chart.inside ? bend : -bend;
    const ToothMarks *found =
        marks.marks_of(timed.tool, cutter.profile.radius_mm(), moment, wall_per_mm, true);
    if (found != nullptr && found->pitch_mm() > 0 && (least == 0 || found->pitch_mm() < least))
      least = found->pitch_mm();
  }
  return least;
}

} // namespace asperity
