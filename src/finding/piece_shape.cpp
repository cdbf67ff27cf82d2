// Where a piece of path runs: its lowest tip height, its length.
#include "piece_shape.h"

namespace asperity {

double lowest_u(const Curve &curve) {
  if (curve.is_line() || curve.is_plan_arc())
    return curve.end.z < curve.begin.z ? 1.0 : 0.0;
  double best = 0.0;
  for (int k = 1; k <= kArcSamples; ++k)
    if (const double u = static_cast<double>(k) / kArcSamples; curve.point(u).z < curve.point(best).z)
      best = u;
  return best;
}

} // namespace asperity
