// Which part of the cutter's edge is in the stock.
#pragma once

#include "asperity/cut/force.h"
#include "asperity/cut/stock.h"
#include "asperity/sweep/swept_path.h"
#include "front_crossing.h"

#include <cstdint>
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
  void clear() {
    slices.clear();
    axial_depth_mm = radial_depth_mm = 0.0;
    widest = {};
    makes_left_wall = makes_right_wall = false;
  }
};

/// Plan offset of the bent axis at height h above the tip, read off one side's nodes.
Vec2 offset_at(const BendNodes &nodes, const SweptCutter &cutter, double height_mm);

/// Finds the contact of one cutter at one place, for one bending after the other. The stock must not change
/// between begin and the last find.
class ContactSearch {
public:
  explicit ContactSearch(const Stock &stock) : stock_(stock) {}

  /// At a new place, with the cutter moving along the unit vector feed.
  void begin(Vec2 feed);
  /// The cutter with its tip at tip (unbent) and its axis bent by `nodes`. Holds until the next call.
  const Contact &find(const SweptCutter &cutter, Vec3 tip_mm, const BendNodes &nodes);

private:
  /// A circle that touches the stock, with the part of the layer beside the flutes.
  struct Front {
    FrontCircle circle;
    double low_mm = 0, high_mm = 0;
    bool begins_in_stock = false;
    int crossings = 0;
  };
  /// A layer's circle when all its marks were looked at, and what they showed.
  struct Seen {
    Vec2 centre_mm{0.0};
    double radius_mm = 0;
    double room_mm = 0;         ///< in air: the circle may move or grow so far and surely stay there
    bool is_new = true;         ///< nothing was looked at yet
    std::uint64_t in_stock = 0; ///< a bit for each mark
    Stock::Depths depths_mm;
  };

  void look_at(const FrontCircle &circle, double low_mm, double high_mm);
  /// Places off the grid are at least so far from the blank.
  double beyond_grid_mm() const { return 2.0 * stock_.grid().cell_mm; }
  void see(const FrontCircle &circle, Seen &seen);
  /// A circle that has moved by `shift_mm`: reads again only the marks that may have changed sides and those
  /// beside a crossing, into again_mm_. False if any has changed sides, or too many may have.
  bool see_again(const FrontCircle &circle, double shift_mm, const Seen &seen);
  /// Takes the front's crossings from the list.
  void add_slices(const Front &front, double tip_mm, const Turn *&crossing);
  /// The length of what was added.
  double add_slice(const Front &front, double tip_mm, const Turn &entry, const Turn &exit);

  const Stock &stock_;
  Vec2 feed_{0.0};
  Stock::Places marks_;
  std::vector<Seen> seen_; ///< layer by layer
  Stock::Depths again_mm_;
  std::vector<Front> fronts_;
  std::vector<Crossing> crossings_;
  std::vector<Turn> angles_;
  Contact contact_;
};

/// Sideways push and thrust of the end edges while plunging [N], part frame; z positive down (negative:
/// pushed up). Each end edge cuts over that part of its length that lies over stock, chip = axial feed per
/// tooth.
Vec3 plunge_force_N(const Stock &stock, const SweptCutter &cutter, Vec3 tip_mm, const ForceCoefficients &k,
                    int flutes, double axial_feed_per_tooth_mm);

} // namespace asperity
