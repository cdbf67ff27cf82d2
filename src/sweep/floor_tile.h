// Lowers one square of a floor chart under the strokes about it, halving it until bounds leave few strokes.
#pragma once

#include "ball_lines.h"
#include "floor_block.h"
#include "floor_ceiling.h"
#include "floor_flank.h"
#include "floor_path.h"

#include "asperity/chart/floor_chart.h"

#include <array>
#include <span>
#include <vector>

namespace asperity {

/// Working memory of one thread.
class FloorTile {
public:
  static constexpr std::size_t kSide = FloorCeiling::kBlocks * FloorBlock::kSide; ///< 64 cells
  static constexpr std::size_t kHullSide = 16; ///< cells of squares at which hulls give way to their strokes

  FloorTile(FloorChart &chart, const FloorPath &path) : chart_(chart), path_(path) {}

  /// Lowers the cells from column i0, row j0 on under the given strokes.
  void cut(std::size_t i0, std::size_t j0, std::span<const std::int32_t> strokes);

private:
  /// A stroke without short form: any cutter but a ball or nearly one, any curve but a line, or a steep one.
  struct Other {
    double bound_mm;
    std::int32_t stroke;
  };

  bool find_level();
  void fetch_next_row();
  template <int kNear> void fetch_row(std::size_t row) const;
  void gather(std::span<const std::int32_t> strokes);
  void halve(std::size_t depth, std::size_t i, std::size_t j, std::size_t side);
  bool has_hulls() const { return !path_.hulls.hulls.empty(); }
  void unwrap(BallLines &lines, const BallLines &hulls, float ceiling, const CellSquare &square) const;
  void cut_block(BallLines &lines, float ceiling, std::size_t i, std::size_t j);
  void lower_under_lines(const BallLines &lines, float ceiling);
  void lower_under_line(const FloorStroke &stroke, std::int32_t index);
  bool is_beyond(double lowest_mm, std::int32_t stroke) const;
  void lower_under_others();
  void lower_exactly(const FloorStroke &stroke, const Flank &flank, std::int32_t index);
  void keep_block(std::size_t i, std::size_t j);
  void store();

  FloorChart &chart_;
  const FloorPath &path_;
  std::size_t i0_ = 0, j0_ = 0;
  std::size_t rows_sent_for_ = 0;
  LeaningPlane plane_;
  FloorCeiling ceiling_;           ///< above it no stroke is looked at
  std::array<BallLines, 3> lines_; ///< of the tile, its quarters, their quarters, ...
  std::vector<Other> others_;
  std::vector<std::uint32_t> order_;
  FloorBlock block_{};
  std::int32_t latest_ = 0; ///< greatest of its winners
  Vec2 block_middle_{0.0};
  /// The tile's cells row by row.
  std::array<float, kSide * kSide> height_{};
  std::array<std::uint32_t, kSide * kSide> owner_{};
};

} // namespace asperity
