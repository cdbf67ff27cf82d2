// A square part of a floor chart, kept in blocks that know their highest cell.
#pragma once

#include "asperity/chart/floor_chart.h"

#include "floor_flank.h"
#include "floor_stroke.h"

#include <array>

namespace asperity {

class FloorTile {
public:
  static constexpr std::size_t kBlock = 8;               ///< cells along a block's side
  static constexpr std::size_t kBlocks = 8;              ///< blocks along a tile's side
  static constexpr std::size_t kSide = kBlock * kBlocks; ///< cells along a tile's side

  /// Copies the cells from column i0, row j0 on.
  void load(const FloorChart &chart, std::size_t i0, std::size_t j0);
  void store(FloorChart &chart) const;

  /// Lowest tip height plus flank anywhere over the tile: a stroke's place in the order, and its bound.
  double bound_mm(const FloorStroke &stroke, const Flank &flank) const;
  /// True when no stroke of this bound or a higher one can change the tile.
  bool is_beyond(double bound_mm) const;
  void lower(const FloorStroke &stroke, const Flank &flank);

private:
  static constexpr std::size_t kCells = kBlock * kBlock;
  struct Block {
    std::array<double, kCells> x, y;
    std::array<double, kCells> wanted;
    std::array<float, kCells> envelope;
    std::array<std::uint32_t, kCells> owner;
    Vec2 middle{0.0};
    double highest_wanted = 0.0;
    float highest = 0.0f;           ///< of envelope
    std::uint32_t latest_owner = 0; ///< largest of owner
  };

  void load_block(Block &block, const FloorChart &chart, std::size_t i0, std::size_t j0);
  void measure(Block &block) const;
  bool can_lower(const Block &block, const FloorStroke &stroke, const Flank &flank) const;
  template <class Contact>
  void lower_by(const Contact &contact, const FloorStroke &stroke, const Flank &flank);
  template <class Contact> void lower_block(Block &block, const Contact &contact, std::uint32_t owner) const;

  std::array<Block, kBlocks * kBlocks> blocks_;
  std::size_t i0_ = 0, j0_ = 0;
  Vec2 low_{0.0}; ///< centre of cell (0, 0) of the tile
  double spacing_ = 1.0, base_ = 0.0;
};

} // namespace asperity
