// Lowers the blocks of a tile under one stroke, passing over those that cannot change.
#include "floor_tile.h"

#include "floor_contact.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {
namespace {

constexpr float kNever = -std::numeric_limits<float>::infinity();
/// Bounds are taken lower by this, more than their rounding [mm].
constexpr double kRounding_mm = 1e-11;

/// Least height a stroke can leave within `half` (square's half side) of `middle`.
double bound_over(const FloorStroke &stroke, const Flank &flank, Vec2 middle, double half) {
  const double away = std::max(0.0, stroke.distance_mm(middle) - half * std::sqrt(2.0) - kRounding_mm);
  if (away > flank.reach)
    return std::numeric_limits<double>::infinity();
  if (stroke.slope == 0.0) // exact over the disc, so that equal depths compare equal
    return stroke.z_mm + (away > flank.flat ? flank.height(away) - kRounding_mm : 0.0);
  double lowest = stroke.z_mm;
  if (!stroke.is_arc) {
    const double s = glm::dot(middle - stroke.low, stroke.low_along);
    const double spread = half * (std::abs(stroke.low_along.x) + std::abs(stroke.low_along.y));
    const double first = s - spread - flank.farthest_shift(stroke.slope);
    lowest += stroke.slope * std::clamp(first, 0.0, stroke.length_mm);
  }
  return lowest + flank.height(away) - kRounding_mm;
}

/// True when every cell of the square belongs to a neighbour of the stroke.
bool is_clipped(const FloorStroke &stroke, Vec2 middle, double half) {
  const auto spread = [half](Vec2 along) { return half * (std::abs(along.x) + std::abs(along.y)); };
  return -glm::dot(middle - stroke.low, stroke.low_along) - spread(stroke.low_along) > stroke.clip_low_mm ||
         glm::dot(middle - stroke.high, stroke.high_along) - spread(stroke.high_along) > stroke.clip_high_mm;
}

} // namespace

void FloorTile::load(const FloorChart &chart, std::size_t i0, std::size_t j0) {
  i0_ = i0;
  j0_ = j0;
  low_ = {chart.x_mm(i0), chart.y_mm(j0)};
  spacing_ = chart.spacing_mm;
  base_ = chart.base_mm;
  for (std::size_t b = 0; b < blocks_.size(); ++b)
    load_block(blocks_[b], chart, i0 + b % kBlocks * kBlock, j0 + b / kBlocks * kBlock);
}

void FloorTile::load_block(Block &block, const FloorChart &chart, std::size_t i0, std::size_t j0) {
  block.middle = {0.5 * (chart.x_mm(i0) + chart.x_mm(i0 + kBlock - 1)),
                  0.5 * (chart.y_mm(j0) + chart.y_mm(j0 + kBlock - 1))};
  block.highest_wanted = -std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < kCells; ++k) {
    const std::size_t i = i0 + k % kBlock, j = j0 + k / kBlock;
    block.x[k] = chart.x_mm(i);
    block.y[k] = chart.y_mm(j);
    const bool is_cell = i < chart.nx && j < chart.ny && chart.in_feature(chart.at(i, j));
    // Nothing is lower than "never", so cells outside the feature stay as they are.
    block.envelope[k] = is_cell ? chart.envelope_mm[chart.at(i, j)] : kNever;
    block.owner[k] = is_cell ? chart.owner[chart.at(i, j)] : 0;
    block.wanted[k] = is_cell ? double(chart.wanted_mm[chart.at(i, j)]) : 0.0;
    if (is_cell)
      block.highest_wanted = std::max(block.highest_wanted, block.wanted[k]);
  }
  measure(block);
}

void FloorTile::store(FloorChart &chart) const {
  for (std::size_t b = 0; b < blocks_.size(); ++b)
    for (std::size_t k = 0; k < kCells; ++k) {
      const std::size_t i = i0_ + b % kBlocks * kBlock + k % kBlock,
                        j = j0_ + b / kBlocks * kBlock + k / kBlock;
      if (i >= chart.nx || j >= chart.ny || blocks_[b].envelope[k] == kNever)
        continue;
      chart.envelope_mm[chart.at(i, j)] = blocks_[b].envelope[k];
      chart.owner[chart.at(i, j)] = blocks_[b].owner[k];
    }
}

void FloorTile::measure(Block &block) const {
  float highest = kNever;
  std::uint32_t latest = 0;
  for (std::size_t k = 0; k < kCells; ++k) {
    highest = block.envelope[k] > highest ? block.envelope[k] : highest;
    latest = block.owner[k] > latest ? block.owner[k] : latest;
  }
  block.highest = highest;
  block.latest_owner = latest;
}

double FloorTile::bound_mm(const FloorStroke &stroke, const Flank &flank) const {
  const double half = 0.5 * spacing_ * double(kSide - 1);
  return bound_over(stroke, flank, low_ + Vec2(half), half);
}

bool FloorTile::is_beyond(double bound_mm) const {
  return std::all_of(blocks_.begin(), blocks_.end(), [&](const Block &block) {
    return block.highest == kNever || float((bound_mm - base_) - block.highest_wanted) > block.highest;
  });
}

bool FloorTile::can_lower(const Block &block, const FloorStroke &stroke, const Flank &flank) const {
  if (block.highest == kNever)
    return false;
  const double half = 0.5 * spacing_ * double(kBlock - 1);
  if (is_clipped(stroke, block.middle, half))
    return false;
  const double bound = bound_over(stroke, flank, block.middle, half);
  if (bound == std::numeric_limits<double>::infinity())
    return false;
  // Rounding to float keeps order, so no cell of the block can come out lower than this.
  const float residual = float((bound - base_) - block.highest_wanted);
  return residual < block.highest || (residual == block.highest && stroke.owner < block.latest_owner);
}

template <class Contact>
void FloorTile::lower_block(Block &block, const Contact &contact, std::uint32_t owner) const {
  std::array<float, kCells> found;
  for (std::size_t k = 0; k < kCells; ++k)
    found[k] = float((contact(block.x[k], block.y[k]) - base_) - block.wanted[k]);
  for (std::size_t k = 0; k < kCells; ++k) {
    const float now = block.envelope[k];
    const bool is_tie = found[k] == now && found[k] < std::numeric_limits<float>::infinity();
    const bool takes = found[k] < now || (is_tie && owner < block.owner[k]);
    block.envelope[k] = takes ? found[k] : now;
    block.owner[k] = takes ? owner : block.owner[k];
  }
  measure(block);
}

template <class Contact>
void FloorTile::lower_by(const Contact &contact, const FloorStroke &stroke, const Flank &flank) {
  Vec2 low, high;
  stroke.box(flank.reach, low, high);
  const double side = spacing_ * double(kBlock);
  const auto block_of = [&](double from_first_cell) {
    const double b = std::floor((from_first_cell + 0.5 * spacing_) / side);
    return static_cast<std::size_t>(std::clamp(b, 0.0, double(kBlocks - 1)));
  };
  for (std::size_t bj = block_of(low.y - low_.y); bj <= block_of(high.y - low_.y); ++bj)
    for (std::size_t bi = block_of(low.x - low_.x); bi <= block_of(high.x - low_.x); ++bi) {
      Block &block = blocks_[bj * kBlocks + bi];
      if (can_lower(block, stroke, flank))
        lower_block(block, contact, stroke.owner);
    }
}

void FloorTile::lower(const FloorStroke &stroke, const Flank &flank) {
  const bool is_ball = flank.flat == 0.0 && flank.corner == flank.reach && flank.lean == 0.0;
  if (stroke.is_arc && stroke.slope == 0.0)
    lower_by(AnyOnLevelArc(stroke, flank), stroke, flank);
  else if (stroke.is_arc)
    lower_by(AnyOnHelix(stroke, flank), stroke, flank);
  else if (is_ball)
    lower_by(BallOnLine(stroke, flank), stroke, flank);
  else if (flank.is_disc())
    lower_by(DiscOnLine(stroke, flank), stroke, flank);
  else
    lower_by(AnyOnLine(stroke, flank), stroke, flank);
}

} // namespace asperity
