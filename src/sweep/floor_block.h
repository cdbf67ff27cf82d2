// Eight by eight cells of a floor: heights left by a ball on straight strokes, in short floats near the
// cells.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace asperity {

/// Places of the cells from the middle, counted -3.5 .. 3.5.
struct BlockCells {
  static constexpr std::size_t kSide = 8, kCells = kSide * kSide;

  alignas(64) float x[kCells], y[kCells];
  constexpr BlockCells() : x(), y() {
    for (std::size_t k = 0; k < kCells; ++k) {
      x[k] = static_cast<float>(k % kSide) - 0.5f * static_cast<float>(kSide - 1);
      y[k] = static_cast<float>(k / kSide) - 0.5f * static_cast<float>(kSide - 1);
    }
  }
};

/// Heights are kept above a leaning plane near the surface, where floats are fine: rounding costs less than
/// the last bit of the chart.
struct FloorBlock {
  static constexpr std::size_t kSide = BlockCells::kSide, kCells = BlockCells::kCells;

  alignas(64) std::array<float, kCells> height;
  alignas(64) std::array<std::int32_t, kCells> winner; ///< stroke
  float highest;                                       ///< of height

  /// `none` stands for no stroke, and is greater than any.
  void clear(std::int32_t none);
};

/// A ball on an endless straight line over a block; cells are counted -3.5 .. 3.5 from the middle.
struct BallLineOverBlock {
  float across, across_x, across_y; ///< distance from the line, at the middle and per cell
  float base, base_x, base_y;       ///< contact's height under the line, above the plane
  float stretch;                    ///< sqrt(1 + slope^2)
  float radius;
};

/// The same between the line's ends.
struct BallSpanOverBlock {
  BallLineOverBlock line;        ///< base: tip height abreast of the cell, above the plane
  float along, along_x, along_y; ///< place on the line abreast of the cell, from abreast of the middle
  float lag;                     ///< slope / sqrt(1 + slope^2)
  float begin, end;              ///< of the stroke
  float slope;
};

/// A ball grown or worn a little: an arc of line.radius about a circle of radius flat (< 0: worn).
struct GrownSpanOverBlock {
  BallSpanOverBlock span;
  double flat, slope;
};
/// Whether heights keep within kGrown_mm.
bool has_grown_form(double radius_mm, double flat_mm);
inline constexpr double kGrown_mm = 1e-7;

/// Lower the block; among equals the smaller stroke keeps the cell. Within half a radius or so of the line.
void lower_block_under(FloorBlock &block, const BallLineOverBlock &line, std::int32_t stroke);
/// For cells within kNearShare of the radius: the circle's series instead of roots.
void lower_block_close_under(FloorBlock &block, const BallLineOverBlock &line, std::int32_t stroke);
void lower_block_under(FloorBlock &block, const BallSpanOverBlock &span, std::int32_t stroke);
void lower_block_under(FloorBlock &block, const GrownSpanOverBlock &grown, std::int32_t stroke);
/// Lowers the block to given heights above the plane.
void lower_block_to(FloorBlock &block, const std::array<float, FloorBlock::kCells> &height,
                    std::int32_t stroke);

/// The series of 1 - sqrt(1 - x) is cut after x^5: at x = 0.03 the rest is 2e-11 of the radius.
inline constexpr double kNearShare = 0.173; // sqrt(0.03)

/// Above-plane heights of one row of cells become residuals, lower and with the smaller owner than before.
struct FloorRow {
  const float *wanted;
  float *envelope;
  std::uint32_t *owner;
  double offset, offset_per_cell; ///< plane above chart base at the row's first cell, and per cell
};
void store_row(const FloorRow &row, const float *height, const std::uint32_t *owner, std::size_t cells);

} // namespace asperity
