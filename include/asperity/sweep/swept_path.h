// The bent cutter's path, ready to be swept over charts in any order.
#pragma once

#include "asperity/shape/curve.h"
#include "asperity/shape/cutter_profile.h"

#include <array>
#include <cstdint>
#include <vector>

namespace asperity {

inline constexpr std::size_t kBendNodes = 8;

/// Where the cutter's axis really is, relative to the commanded curve, at one moment [mm].
/// The axis is bent: at height h above the tip its plan offset is read off the nodes (linear between them,
/// steady beyond the ends). `left` holds when the wall being made lies to the left of the motion, `right` for
/// the right; both are equal while the cutter stands or plunges.
struct AxisOffset {
  std::array<Vec2, kBendNodes> left{};
  std::array<Vec2, kBendNodes> right{};
  double axial_mm = 0; ///< + up
};

struct SweptCutter {
  CutterProfile profile;                           ///< grown by diameter error and runout
  double flute_length_mm = 0;                      ///< cuts up to this height above the tip
  std::array<double, kBendNodes> node_height_mm{}; ///< above the tip, rising
};

/// One stretch of path along which the offset changes linearly (in u) from begin to end.
struct SweptPiece {
  Curve curve;
  AxisOffset begin, end;
  std::uint32_t owner = 0;     ///< index into TimedPath::pieces
  std::uint16_t cutter = 0;    ///< index into SweptPath::cutters
  bool joins_previous = false; ///< begins, offset and all, where the piece before it ended
};

struct SweptPath {
  std::vector<SweptCutter> cutters;
  std::vector<SweptPiece> pieces;
};

} // namespace asperity
