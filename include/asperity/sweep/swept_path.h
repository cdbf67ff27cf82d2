// The bent cutter's path, ready to be swept over charts in any order; a move of many takes some 200 bytes.
#pragma once

#include "asperity/base/large_array.h"
#include "asperity/shape/curve.h"
#include "asperity/shape/cutter_profile.h"

#include <array>
#include <cstdint>
#include <vector>

namespace asperity {

inline constexpr std::size_t kBendNodes = 8;

/// Plan offsets of the axis at the nodes [mm].
using BendNodes = std::array<Vec2, kBendNodes>;

/// Where the cutter's axis really is, relative to the commanded curve, at one moment [mm].
/// The axis is bent: at height h above the tip its plan offset is read off the nodes (linear between them,
/// steady beyond the ends). `left` holds when the wall being made lies to the left of the motion, `right` for
/// the right; both are equal while the cutter stands or plunges.
struct AxisOffset {
  BendNodes left{};
  BendNodes right{};
  double axial_mm = 0; ///< + up
};

/// How far the axis is offset in plan at most.
double longest_mm(const BendNodes &nodes);
double longest_mm(const AxisOffset &offset);

/// a + share (b - a).
BendNodes between(const BendNodes &a, const BendNodes &b, double share);
AxisOffset between(const AxisOffset &a, const AxisOffset &b, double share);

struct SweptCutter {
  CutterProfile profile;                           ///< grown by diameter error and runout
  double flute_length_mm = 0;                      ///< cuts up to this height above the tip
  std::array<double, kBendNodes> node_height_mm{}; ///< above the tip, rising
};

/// An AxisOffset in half the room: whole multiples of 0.01 nm, so rounded by 0.005 nm at most. What bends
/// farther than 21 mm is kept at 21 mm.
struct PackedOffset {
  std::array<std::int32_t, 4 * kBendNodes + 1> units{}; ///< left, right (x, y of each node), axial

  static PackedOffset of(const AxisOffset &offset);
  bool operator==(const PackedOffset &) const = default;
  Vec2 left(std::size_t node) const { return {mm(2 * node), mm(2 * node + 1)}; }
  Vec2 right(std::size_t node) const { return left(kBendNodes + node); }
  double axial_mm() const { return mm(4 * kBendNodes); }
  AxisOffset unpacked() const;
  /// At least as long as the longest offset of a node in plan.
  double plan_bound_mm() const;
  double longest_mm() const { return asperity::longest_mm(unpacked()); }

  static constexpr double kPerMm = 1e8;

private:
  double mm(std::size_t i) const { return units[i] / kPerMm; }
};

/// One stretch of path along which the offset changes linearly (in u) from begin to end.
struct BentPiece {
  Curve curve;
  AxisOffset begin, end;
  std::uint32_t owner = 0;     ///< index into TimedPath::pieces
  std::uint16_t cutter = 0;    ///< index into SweptPath::cutters
  bool joins_previous = false; ///< begins, offset and all, where the piece before it ended
};

inline constexpr std::uint32_t kNoArc = 0xffffffff;

/// A BentPiece as its path keeps it: what neighbours share lies in the path.
struct SweptPiece {
  Vec3 begin{0.0}, end{0.0};                      ///< of the commanded curve
  double u0 = 0, u1 = 1;                          ///< portion of the arc
  std::uint32_t arc = kNoArc;                     ///< index into SweptPath::arcs; lines have none
  std::uint32_t begin_offset = 0, end_offset = 0; ///< indices into SweptPath::offsets
  std::uint32_t owner = 0;
  std::uint16_t cutter = 0;
  bool joins_previous = false;

  bool is_line() const { return arc == kNoArc; }
};

struct SweptPath {
  std::vector<SweptCutter> cutters;
  LargeArray<SweptPiece> pieces;
  LargeArray<PackedOffset> offsets; ///< equal neighbours once
  std::vector<Curve> arcs;          ///< whole ones, each once for all pieces that are portions of it

  /// Appends the portion [u0, u1] of the piece's curve; its offsets hold at the ends of the portion.
  void add(const BentPiece &piece, double u0 = 0.0, double u1 = 1.0);
  Curve curve(const SweptPiece &piece) const;
  const PackedOffset &begin_offset(const SweptPiece &piece) const { return offsets[piece.begin_offset]; }
  const PackedOffset &end_offset(const SweptPiece &piece) const { return offsets[piece.end_offset]; }
  BentPiece bent(const SweptPiece &piece) const;
  /// The pieces, whose owners do not fall, with owners from `first` on and below `end`: a path of its own.
  SweptPath stretch(std::uint32_t first, std::uint32_t end) const;
  SweptPath up_to(std::uint32_t owner) const { return stretch(0, owner); }
};

} // namespace asperity
