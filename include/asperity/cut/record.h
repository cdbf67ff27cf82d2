// What happened along the path: engagement, force, bending, heat, at every sample; and the bent path to
// sweep.
#pragma once

#include "asperity/base/large_array.h"
#include "asperity/base/vec.h"
#include "asperity/sweep/swept_path.h"

#include <cstdint>

namespace asperity {

/// State at one moment of the cut. Part frame, mm, s, N.
struct CutSample {
  std::uint32_t piece = 0; ///< index into TimedPath::pieces
  double u = 0;            ///< place on it, 0..1
  double time_s = 0;
  Vec3 position_mm{0.0}; ///< commanded tip
  float speed_mm_per_s = 0;
  float feed_per_tooth_mm = 0;
  float axial_depth_mm = 0;          ///< engaged length of edge
  float radial_depth_mm = 0;         ///< mean over the engaged length
  float entry_rad = 0, exit_rad = 0; ///< widest immersed arc, force.h convention
  float thickest_chip_mm = 0;
  float mean_force_N[3] = {0, 0, 0}; ///< part frame x, y; z positive down
  float peak_force_N = 0;            ///< plan, over a revolution
  float tip_bend_mm = 0;             ///< tip, away from the wall positive (machine + cutter + blank)
  float chip_temperature_C = 0;      ///< adiabatic, at most the flow temperature; 0 = no chip
  float power_W = 0;
  bool in_contact = false;
  bool climb = false;    ///< wall being made lies to the right
  bool plunging = false; ///< steeper than 45 degrees downward
};

struct CutRecord {
  LargeArray<CutSample> samples; ///< in time order
  SweptPath swept;
};

} // namespace asperity
