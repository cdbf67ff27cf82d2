// Where a side-milled wall really comes to stand, with cutter, machine and blank yielding. Pure functions.
#pragma once

#include "asperity/cut/deflection.h"
#include "asperity/cut/force.h"

namespace asperity {

/// One straight pass along a wall.
struct WallCut {
  ForceCoefficients k;
  ToothGeometry teeth;
  CutterBeam beam;
  /// Machine and blank: too slow for single teeth, they answer to the mean force.
  double steady_compliance_mm_per_N = 0;
  double axial_depth_mm = 0;
  double radial_depth_mm = 0; ///< as programmed
  double feed_per_tooth_mm = 0;
  bool climb = true;
};

/// Forces normal to the wall, positive AWAY from it (wall left proud).
struct WallLoad {
  double at_once_N = 0;      ///< at the moment the wall point is made
  double mean_N = 0;         ///< over a revolution
  double cutter_bend_mm = 0; ///< movement of the cutter at the point's height under the force at once
};

/// Load while the wall point at height z above the tip is made by a pass really `radial_depth_mm` deep.
WallLoad wall_load(const WallCut &cut, double radial_depth_mm, double z_mm);

struct WallError {
  double error_mm = 0; ///< positive: stock left; never more than the radial depth
  double real_radial_depth_mm = 0;
  WallLoad load; ///< at the real depth
};

/// Error of the wall at height z: the depth and the yielding settle each other, e = yield(radial depth - e),
/// found by repeated half steps. Bending is shared out slice by slice; quasi-static, so away from resonance
/// only. [derived from the linear-edge force and the beam's compliance; agrees in kind with Kim & Shin 2021]
WallError wall_error(const WallCut &cut, double z_mm);

} // namespace asperity
