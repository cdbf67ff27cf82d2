// Whether a curve is sure to keep clear of something, all along.
#pragma once

#include "asperity/shape/curve.h"

namespace asperity {

/// `spare_mm(p)`, of a point in plan, must change by no more than the way gone, as signed distances do. One
/// look then decides about a stretch of the curve, or it is halved. False where some point has nothing to
/// spare, and where the looks are used up: they are counted down.
template <class Spare>
bool keeps_clear(const Curve &curve, const Spare &spare_mm, int &looks_left, double u0 = 0.0,
                 double u1 = 1.0) {
  if (--looks_left < 0)
    return false;
  const double middle = 0.5 * (u0 + u1);
  const double spare = spare_mm(plan(curve.point(middle)));
  return spare >= 0.5 * (u1 - u0) * curve.length_mm() ||
         (spare > 0.0 && keeps_clear(curve, spare_mm, looks_left, u0, middle) &&
          keeps_clear(curve, spare_mm, looks_left, middle, u1));
}

} // namespace asperity
