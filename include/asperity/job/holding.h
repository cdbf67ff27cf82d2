// What holds the blank and must not be touched.
#pragma once

#include "asperity/base/vec.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// A round (bolt) or box (clamp) volume the cutter must not enter. Part frame, mm.
struct KeepOut {
  std::string name;
  bool is_round = true;
  Vec2 centre{0.0};
  double diameter_mm = 0; ///< round
  Vec2 size_mm{0.0};      ///< box
  double z_top_mm = 0;
};

struct HoldDown {
  std::vector<KeepOut> keep_outs;
  std::optional<double> spoilboard_top_z_mm;
  double spoilboard_cut_allowed_mm = 0;
  /// Clamping force of all bolts and clamps together [N]; nothing = not checked.
  std::optional<double> clamp_force_N;
  /// Height of the face the blank is gripped at; the blank bends above it [mm].
  std::optional<double> grip_z_mm;
};

} // namespace asperity
