// The innermost loops of the floor sweep, branch-free, for the compiler to vectorise.
#include "floor_block.h"

#include "asperity/base/wide_vectors.h"
#include "corner_on_line.h"

#include <cmath>
#include <limits>

namespace asperity {
namespace {

constexpr float kInfinity = std::numeric_limits<float>::infinity();
constexpr std::size_t kSide = FloorBlock::kSide, kCells = FloorBlock::kCells;

constexpr BlockCells kPlaces;

/// The block takes what is lower. A plain comparison keeps the search for the highest a vector one, where
/// std::max does not.
inline __attribute__((always_inline)) void take(FloorBlock &block, const float *__restrict found,
                                                std::int32_t stroke) {
  float *__restrict height = block.height.data();
  std::int32_t *__restrict winner = block.winner.data();
  float highest = -kInfinity;
#pragma omp simd reduction(max : highest)
  for (std::size_t k = 0; k < kCells; ++k) {
    const float before = height[k];
    const std::int32_t who = winner[k];
    const bool takes = (found[k] < before) | ((found[k] == before) & (stroke < who));
    const float now = takes ? found[k] : before;
    height[k] = now;
    winner[k] = takes ? stroke : who;
    highest = now > highest ? now : highest;
  }
  block.highest = highest;
}

template <int kSteps>
inline __attribute__((always_inline)) void
lower_under_grown(FloorBlock &block, const GrownSpanOverBlock &grown, std::int32_t stroke) {
  const BallSpanOverBlock p = grown.span;
  const BallLineOverBlock l = p.line;
  const CornerOnLine<float, kSteps> contact(double(l.radius), grown.flat, grown.slope);
  const float radius2 = l.radius * l.radius, flat = static_cast<float>(grown.flat);
  alignas(64) float found[kCells];
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const float x = kPlaces.x[k], y = kPlaces.y[k];
    const float q = l.across + (l.across_x * x + l.across_y * y);
    const float s = p.along + (p.along_x * x + p.along_y * y);
    float c = s - contact.shift(std::abs(q));
    c = c > p.begin ? c : p.begin;
    c = c < p.end ? c : p.end;
    const float u = c - s, beyond = std::sqrt(q * q + u * u) - flat, e = beyond > 0.0f ? beyond : 0.0f;
    const float e2 = e * e;
    found[k] =
        l.base + (l.base_x * x + l.base_y * y) + p.slope * u + e2 / (l.radius + std::sqrt(radius2 - e2));
  }
  take(block, found, stroke);
}

ASPERITY_WIDE
void lower_in_one_step(FloorBlock &block, const GrownSpanOverBlock &grown, std::int32_t stroke) {
  lower_under_grown<1>(block, grown, stroke);
}

ASPERITY_WIDE
void lower_in_two_steps(FloorBlock &block, const GrownSpanOverBlock &grown, std::int32_t stroke) {
  lower_under_grown<2>(block, grown, stroke);
}

} // namespace

void FloorBlock::clear(std::int32_t none) {
  height.fill(kInfinity);
  winner.fill(none);
  highest = kInfinity;
}

ASPERITY_WIDE
void lower_block_under(FloorBlock &block, const BallLineOverBlock &line, std::int32_t stroke) {
  const BallLineOverBlock l = line;
  const float radius2 = l.radius * l.radius;
  alignas(64) float found[kCells];
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const float x = kPlaces.x[k], y = kPlaces.y[k];
    const float q = l.across + (l.across_x * x + l.across_y * y), q2 = q * q;
    // R - sqrt(R^2 - q^2) without cancellation.
    found[k] =
        l.base + (l.base_x * x + l.base_y * y) + l.stretch * (q2 / (l.radius + std::sqrt(radius2 - q2)));
  }
  take(block, found, stroke);
}

ASPERITY_WIDE
void lower_block_close_under(FloorBlock &block, const BallLineOverBlock &line, std::int32_t stroke) {
  const BallLineOverBlock l = line;
  const float per = 1.0f / (l.radius * l.radius), k1 = l.stretch * 0.5f / l.radius;
  alignas(64) float found[kCells];
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const float x = kPlaces.x[k], y = kPlaces.y[k];
    const float q = l.across + (l.across_x * x + l.across_y * y), q2 = q * q, share = q2 * per;
    // 2 (1 - sqrt(1 - x)) / x = 1 + x/4 + x^2/8 + 5 x^3/64 + 7 x^4/128 + ... (binomial series).
    const float series = 1.0f + share * (0.25f + share * (0.125f + share * (0.078125f + share * 0.0546875f)));
    found[k] = l.base + (l.base_x * x + l.base_y * y) + k1 * q2 * series;
  }
  take(block, found, stroke);
}

ASPERITY_WIDE
void lower_block_under(FloorBlock &block, const BallSpanOverBlock &span, std::int32_t stroke) {
  const BallSpanOverBlock p = span;
  const BallLineOverBlock l = span.line;
  const float radius2 = l.radius * l.radius;
  alignas(64) float found[kCells];
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const float x = kPlaces.x[k], y = kPlaces.y[k];
    const float q = l.across + (l.across_x * x + l.across_y * y), q2 = q * q;
    const float s = p.along + (p.along_x * x + p.along_y * y);
    // The lowest contact of the endless line, held between the ends.
    float c = s - p.lag * std::sqrt(radius2 - q2);
    c = c > p.begin ? c : p.begin;
    c = c < p.end ? c : p.end;
    const float u = c - s, d2 = q2 + u * u;
    found[k] =
        l.base + (l.base_x * x + l.base_y * y) + p.slope * u + d2 / (l.radius + std::sqrt(radius2 - d2));
  }
  take(block, found, stroke);
}

bool has_grown_form(double radius_mm, double flat_mm) {
  return std::abs(flat_mm) <= 0.02 * radius_mm && two_steps_error_mm(radius_mm, flat_mm) <= kGrown_mm;
}

void lower_block_under(FloorBlock &block, const GrownSpanOverBlock &grown, std::int32_t stroke) {
  const double radius = double(grown.span.line.radius);
  if (one_step_error_mm(radius, grown.flat) <= kGrown_mm)
    lower_in_one_step(block, grown, stroke);
  else
    lower_in_two_steps(block, grown, stroke);
}

ASPERITY_WIDE
void lower_block_to(FloorBlock &block, const std::array<float, FloorBlock::kCells> &height,
                    std::int32_t stroke) {
  take(block, height.data(), stroke);
}

ASPERITY_WIDE
void store_row(const FloorRow &row, const float *height, const std::uint32_t *owner, std::size_t cells) {
  const float *__restrict wanted = row.wanted;
  float *__restrict envelope = row.envelope;
  std::uint32_t *__restrict owners = row.owner;
  const int count = static_cast<int>(cells);
#pragma omp simd
  for (int i = 0; i < count; ++i) {
    const double plane = row.offset + row.offset_per_cell * static_cast<double>(i);
    const float residual =
        static_cast<float>((static_cast<double>(height[i]) + plane) - static_cast<double>(wanted[i]));
    const float before = envelope[i];
    const std::uint32_t who = owners[i];
    // Not a number outside the feature: then nothing compares.
    const bool takes =
        (residual < before) | ((residual == before) & (residual < kInfinity) & (owner[i] < who));
    envelope[i] = takes ? residual : before;
    owners[i] = takes ? owner[i] : who;
  }
}

} // namespace asperity
