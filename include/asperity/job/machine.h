// The machine as far as it shapes the surface: how it moves, how it yields.
#pragma once

#include "asperity/base/vec.h"

namespace asperity {

struct Machine {
  Vec3 acceleration_mm_per_s2{400.0, 400.0, 200.0};
  Vec3 max_feed_mm_per_min{5000.0, 5000.0, 2000.0};
  double rapid_mm_per_min = 5000.0;
  /// Corner rule: how far a tangent arc may pass from the corner; sets the speed there [mm].
  double corner_deviation_mm = 0.02;
  /// Used for G64 without P: 0 = the corner is not rounded [mm].
  double blend_tolerance_mm = 0.0;
  double stiffness_xy_N_per_um = 0.5;
  double stiffness_z_N_per_um = 2.0;
  Vec3 backlash_mm{0.0, 0.0, 0.0};
  double spindle_max_rpm = 24000.0;
  double tram_deg = 0.0;
};

} // namespace asperity
