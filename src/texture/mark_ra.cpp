// Ra of single marks.
#include "mark_ra.h"

#include "asperity/surface/kinematic.h"

#include <algorithm>
#include <cmath>

namespace asperity {

double MarkRa::ra_mm(const WallChart &chart, std::size_t cell) {
  if (chart.owner[cell] == kNobody)
    return 0.0;
  const PathPiece &piece = source_.path.pieces[chart.owner[cell]];
  const std::size_t column = cell % chart.columns();
  const WallRay ray = wall_ray(chart, column);
  const CutterProfile profile = marking_cutter(source_.job, piece.tool).nominal;
  const double share = nearest_share(piece.curve, ray.foot + profile.radius_mm() * ray.normal);
  const double height = std::max(0.0, chart.z_mm[cell / chart.columns()] - piece.curve.point(share).z);
  const bool wall_on_right = cross(plan(piece.curve.velocity(share)), ray.normal) > 0;
  const ToothMarks *marks =
      wall_.marks_of(piece.tool, profile.radius_at(height), moment_at(piece, share), ray.wall_per_mm,
                     wall_on_right == (piece.turn != SpindleTurn::counter_clockwise));
  return marks != nullptr ? cusp_ra_mm(marks->cusp_mm()) : 0.0;
}

double MarkRa::ra_mm(const FloorChart &chart, std::size_t cell) {
  if (chart.owner[cell] == kNobody)
    return 0.0;
  const PathPiece &piece = source_.path.pieces[chart.owner[cell]];
  const Vec2 p(chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx));
  const FloorTooth tooth = floor_.tooth(piece.tool, moment_at(piece, nearest_share(piece.curve, p)));
  if (tooth.pitch_mm == 0)
    return 0.0;
  if (tooth.hollow_mm > 0)
    return cusp_ra_mm(arc_cusp_mm(tooth.hollow_mm, tooth.pitch_mm));
  constexpr double kSawtoothRa = 0.25; // of its height
  return kSawtoothRa * dish_cusp_mm(tooth.pitch_mm, kDish_rad);
}

} // namespace asperity
