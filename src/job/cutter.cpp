// The cutter's nominal silhouette.
#include "asperity/job/cutter.h"

#include "asperity/base/units.h"

namespace asperity {

CutterProfile Cutter::profile() const {
  const double radius_mm = 0.5 * diameter_mm;
  const double tip_radius_mm = 0.5 * tip_diameter_mm;
  switch (kind) {
  case CutterKind::ball:
    return CutterProfile::ball(radius_mm);
  case CutterKind::corner_radius:
    return CutterProfile::corner_radius(radius_mm, corner_radius_mm);
  case CutterKind::tapered:
    return {radius_mm, tip_radius_mm - corner_radius_mm, corner_radius_mm, rad_from_deg(half_angle_deg)};
  case CutterKind::v:
    return {radius_mm, tip_radius_mm, 0.0, rad_from_deg(half_angle_deg)};
  case CutterKind::flat:
    break;
  }
  return CutterProfile::flat(radius_mm);
}

} // namespace asperity
