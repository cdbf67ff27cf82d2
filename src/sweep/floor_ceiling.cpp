// Takes the highest cell of each block.
#include "floor_ceiling.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr std::size_t kSide = FloorBlock::kSide;
constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// More than cells and bounds are rounded by [mm].
constexpr double kMargin_mm = 1e-5;

} // namespace

void FloorCeiling::find(const FloorChart &chart, std::size_t i0, std::size_t j0, double level_mm) {
  const std::size_t rows = std::min(chart.ny - j0, kBlocks * kSide),
                    columns = std::min(chart.nx - i0, kBlocks * kSide);
  spacing_mm_ = chart.spacing_mm;
  is_open_ = true;
  highest_mm_.fill(-kInfinity);
  for (std::size_t j = 0; j < rows; ++j)
    for (std::size_t i = 0; i < columns; ++i) {
      const std::size_t cell = chart.at(i0 + i, j0 + j);
      if (!chart.in_feature(cell))
        continue;
      const double height =
          double(chart.envelope_mm[cell]) + double(chart.wanted_mm[cell]) + (chart.base_mm - level_mm);
      if (is_open_ && height == kInfinity)
        return;
      is_open_ = false;
      double &highest = highest_mm_[j / kSide * kBlocks + i / kSide];
      highest = std::max(highest, height);
    }
}

float FloorCeiling::above(std::size_t i, std::size_t j, std::size_t side, Vec2 gradient) const {
  if (is_open_)
    return std::numeric_limits<float>::infinity();
  constexpr double kMiddle = 0.5 * double(kBlocks - 1);
  const double block_mm = spacing_mm_ * double(kSide);
  const double leaning =
      0.5 * spacing_mm_ * double(kSide - 1) * (std::abs(gradient.x) + std::abs(gradient.y));
  double highest = -kInfinity;
  for (std::size_t row = j / kSide; row < (j + side) / kSide; ++row)
    for (std::size_t column = i / kSide; column < (i + side) / kSide; ++column) {
      const Vec2 place = block_mm * Vec2(double(column) - kMiddle, double(row) - kMiddle);
      highest = std::max(highest, highest_mm_[row * kBlocks + column] - glm::dot(gradient, place));
    }
  return static_cast<float>(highest + leaning + kMargin_mm);
}

} // namespace asperity
