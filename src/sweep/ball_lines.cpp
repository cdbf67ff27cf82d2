// Bounds of straight ball strokes over squares of cells.
#include "ball_lines.h"

#include "vector_clones.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

constexpr float kInfinity = std::numeric_limits<float>::infinity();
/// Bounds are widened by this, more than what floats lose over a tile [mm].
constexpr float kRounding_mm = 4e-6f;
constexpr float kHalfDiagonal = 1.41422f;
/// "Belongs to no neighbour", kept finite so that vectors compare it.
constexpr float kFar_mm = 1e30f;
/// Whole vectors: what is computed beyond the last stroke is not looked at.
constexpr std::size_t kLanes = 8;

struct Columns {
  const float *field[BallLines::kFields];
};

/// The circle of a ball over distance q lies between q^2 / 2R and R - sqrt(R^2 - q^2).
ASPERITY_VECTOR_CLONES
void bounds_over(const Columns &columns, std::size_t count, CellSquare square, float lean,
                 float *__restrict lower, float *__restrict upper) {
  const float *__restrict across = columns.field[BallLines::kAcross];
  const float *__restrict along = columns.field[BallLines::kAlong];
  const float *__restrict tx = columns.field[BallLines::kTx], *__restrict ty = columns.field[BallLines::kTy];
  const float *__restrict base = columns.field[BallLines::kBase];
  const float *__restrict base_x = columns.field[BallLines::kBaseX];
  const float *__restrict base_y = columns.field[BallLines::kBaseY];
  const float *__restrict length = columns.field[BallLines::kLength];
  const float *__restrict clip_low = columns.field[BallLines::kClipLow];
  const float *__restrict clip_high = columns.field[BallLines::kClipHigh];
  const float *__restrict tip_low = columns.field[BallLines::kTipLow];
  const float *__restrict tip_rise = columns.field[BallLines::kTipRise];
  const float *__restrict tip_least = columns.field[BallLines::kTipLeast];
  const float *__restrict stretch = columns.field[BallLines::kStretch];
  const float *__restrict lag_reach = columns.field[BallLines::kLagReach];
  const float *__restrict reach = columns.field[BallLines::kRadius];
#pragma omp simd
  for (std::size_t i = 0; i < count; ++i) {
    const float radius = reach[i], radius2 = radius * radius, half_curve = 0.5f / radius, end = length[i];
    const float q = std::abs(across[i] + (tx[i] * square.y - ty[i] * square.x));
    const float s = along[i] + (tx[i] * square.x + ty[i] * square.y);
    const float side = square.half * (std::abs(tx[i]) + std::abs(ty[i]));
    const float middle = base[i] + base_x[i] * square.x + base_y[i] * square.y;
    const float spread = square.half * (std::abs(base_x[i]) + std::abs(base_y[i]));
    const float near = q - side > 0.0f ? q - side : 0.0f, most = q + side;

    // Lowest: the endless line's, or, past an end, what the nearest tip can leave.
    const float endless = middle - spread + stretch[i] * near * near * half_curve;
    const float before = -s - side, after = s - end - side, out = before > after ? before : after;
    const float past = out > 0.0f ? out : 0.0f, d2 = near * near + past * past;
    const float d = std::sqrt(d2), steep = lean * radius, far = d > steep ? d : steep;
    const float capped = tip_least[i] + far * (far * half_curve - lean);
    const float held = past > 0.0f ? capped : endless;
    // Sums of zeros and infinities instead of conditions: those would keep the loop from being a vector one.
    const float gone = (before > clip_low[i] ? kInfinity : 0.0f) + (after > clip_high[i] ? kInfinity : 0.0f) +
                       (d2 > radius2 ? kInfinity : 0.0f);
    lower[i] = (held > endless ? held : endless) - kRounding_mm + gone;

    // Highest: over the line's inside the same circle, else the ball standing at the nearest tip.
    const float w2 = radius2 - most * most;
    const float inside = middle + spread + stretch[i] * (radius - std::sqrt(w2 > 0.0f ? w2 : 0.0f));
    float c = s > 0.0f ? s : 0.0f;
    c = c < end ? c : end;
    const float reached = std::sqrt(q * q + (c - s) * (c - s)) + square.half * kHalfDiagonal;
    const float v2 = radius2 - reached * reached;
    const float standing =
        tip_low[i] + tip_rise[i] * c + (radius - std::sqrt(v2 > 0.0f ? v2 : 0.0f)) + lean * reached;
    const float inner = s - side - lag_reach[i], outer = end - s - side, room = inner < outer ? inner : outer;
    const float if_inside = inside + (w2 > 0.0f ? 0.0f : kInfinity);
    const float if_standing = standing + (v2 > 0.0f ? 0.0f : kInfinity);
    upper[i] = (room >= 0.0f ? if_inside : if_standing) + kRounding_mm + gone;
  }
}

} // namespace

void BallLines::make_room(std::size_t count) {
  if (count <= stroke_.size())
    return;
  const std::size_t room = std::max<std::size_t>(64, (2 * count + kLanes - 1) / kLanes * kLanes);
  for (std::vector<float> &field : field_)
    field.resize(room);
  stroke_.resize(room);
  lower_.resize(room);
  upper_.resize(room);
}

void BallLines::add(const FloorStroke &stroke, double radius_mm, const LeaningPlane &level,
                    std::int32_t index) {
  make_room(count_ + 1);
  const std::size_t i = count_++;
  const Vec2 d = level.middle - stroke.low, t = stroke.low_along;
  const double m = stroke.slope, g = std::sqrt(1.0 + m * m), s = glm::dot(d, t);
  const double low = stroke.z_mm - level.z_mm;
  const auto set = [&](Field field, double value) { field_[field][i] = static_cast<float>(value); };
  set(kAcross, cross(t, d));
  set(kAlong, s);
  set(kTx, t.x);
  set(kTy, t.y);
  set(kBase, low + m * s - radius_mm * m * m / (1.0 + g)); // 1 - g, without cancellation
  set(kBaseX, m * t.x);
  set(kBaseY, m * t.y);
  set(kLength, stroke.length_mm);
  set(kClipLow, std::min(stroke.clip_low_mm, double(kFar_mm)));
  set(kClipHigh, std::min(stroke.clip_high_mm, double(kFar_mm)));
  set(kTipLow, low);
  set(kTipRise, m);
  set(kTipLeast, low);
  set(kStretch, g);
  set(kLagReach, radius_mm * m / g);
  set(kRadius, radius_mm);
  stroke_[i] = index;
  lean_ = 0.0f;
}

void BallLines::lean(Vec2 gradient) {
  const auto gx = static_cast<float>(gradient.x), gy = static_cast<float>(gradient.y);
  for (std::size_t i = 0; i < count_; ++i) {
    const float tx = field_[kTx][i], ty = field_[kTy][i], s = field_[kAlong][i], q = field_[kAcross][i];
    field_[kBaseX][i] -= gx;
    field_[kBaseY][i] -= gy;
    // The low end seen from the tile's middle: back along the line and across it.
    const float low_x = -(s * tx - q * ty), low_y = -(s * ty + q * tx);
    field_[kTipLow][i] -= gx * low_x + gy * low_y;
    field_[kTipRise][i] -= gx * tx + gy * ty;
    field_[kTipLeast][i] = field_[kTipLow][i] + std::min(0.0f, field_[kTipRise][i] * field_[kLength][i]);
  }
  lean_ = std::hypot(gx, gy);
}

void BallLines::measure(const CellSquare &square) {
  Columns columns;
  for (std::size_t f = 0; f < kFields; ++f)
    columns.field[f] = field_[f].data();
  bounds_over(columns, (count_ + kLanes - 1) / kLanes * kLanes, square, lean_, lower_.data(), upper_.data());
}

float BallLines::least_upper() const {
  float least = kInfinity;
  for (std::size_t i = 0; i < count_; ++i)
    least = upper_[i] < least ? upper_[i] : least;
  return least;
}

Vec2 BallLines::likely_gradient() const {
  std::size_t best = count_;
  for (std::size_t i = 0; i < count_; ++i)
    if (upper_[i] < kInfinity && (best == count_ || upper_[i] < upper_[best]))
      best = i;
  if (best == count_)
    return Vec2(0.0);
  return {double(field_[kBaseX][best]), double(field_[kBaseY][best])};
}

void BallLines::keep_lowest(const BallLines &all) {
  make_room(all.count_);
  const float least = all.least_upper();
  count_ = 0;
  lean_ = all.lean_;
  for (std::size_t i = 0; i < all.count_; ++i) {
    if (!(all.lower_[i] <= least) || all.lower_[i] == kInfinity)
      continue;
    for (std::size_t f = 0; f < kFields; ++f)
      field_[f][count_] = all.field_[f][i];
    stroke_[count_++] = all.stroke_[i];
  }
}

} // namespace asperity
