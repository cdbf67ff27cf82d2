// Which part of the cutter's edge is in the stock.
#pragma once

#include "asperity/cut/force.h"
#include "asperity/cut/stock.h"
#include "asperity/sweep/swept_path.h"

#include <vector>

namespace asperity {

/// Slices in contact, from the tip up. Heights above the tip, arcs in the convention of force.h.
struct Contact {
  std::vector<ImmersedSlice> slices;
  double axial_depth_mm = 0;  ///< sum of slice lengths, a slice met twice counted once
  double radial_depth_mm = 0; ///< mean over the axial depth
  Immersion widest;
  bool makes_left_wall = false, makes_right_wall = false;
  bool any() const { return !slices.empty(); }
};

/// Plan offset of the bent axis at height h above the tip, read off one side's nodes.
Vec2 offset_at(const std::array<Vec2, kBendNodes> &nodes, const SweptCutter &cutter, double height_mm);

/// The cutter moving along the unit vector feed with its tip at tip (unbent) and its axis bent by `nodes`.
Contact contact_of_moving(const Stock &stock, const SweptCutter &cutter, Vec3 tip_mm, Vec2 feed,
                          const std::array<Vec2, kBendNodes> &nodes);

/// Sideways push and thrust of the end edges while plunging [N], part frame; z positive down (negative:
/// pushed up). Each end edge cuts over that part of its length that lies over stock, chip = axial feed per
/// tooth.
Vec3 plunge_force_N(const Stock &stock, const SweptCutter &cutter, Vec3 tip_mm, const ForceCoefficients &k,
                    int flutes, double axial_feed_per_tooth_mm);

} // namespace asperity
