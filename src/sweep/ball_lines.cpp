// Bounds of straight ball strokes over squares of cells.
#include "ball_lines.h"

#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

constexpr float kInfinity = std::numeric_limits<float>::infinity();
/// Bounds are widened by this, more than what floats lose over a tile [mm].
constexpr float kRounding_mm = 4e-6f;
constexpr float kHalfDiagonal = 1.41422f;
/// Beyond the rim by more than floats may be wrong.
constexpr float kBeyondRim = 1.00001f;
/// Places along a line are wrong by half an ulp of its length: cells this near a joint belong to both.
constexpr double kJointShare = 1e-6, kJoint_mm = 1e-6;
/// "Belongs to no neighbour", kept finite so that vectors compare it.
constexpr float kFar_mm = 1e30f;
/// Whole vectors: what is computed beyond the last stroke is not looked at.
constexpr std::size_t kLanes = 8;

struct Columns {
  const float *field[BallLines::kFields];
};

/// A distance from the line less what the flat bridges; a worn ball's point adds to it.
inline __attribute__((always_inline)) float bridged(float q, float flat) {
  const float beyond = std::abs(q) - flat;
  return std::copysign(beyond > 0.0f ? beyond : 0.0f, q);
}

/// The circle of a ball over distance q lies between q^2 / 2R and R - sqrt(R^2 - q^2). With a flat a, the
/// line's surface lies between the ball's, taken at the distance less a, and |a| slope lower (a > 0) or
/// higher (a < 0) [derived: the flat may lag by a; distances obey the triangle's inequality].
template <bool kHasSlack>
inline __attribute__((always_inline)) void bounds_over(const Columns &columns, std::size_t count,
                                                       CellSquare square, float lean, float *__restrict lower,
                                                       float *__restrict upper) {
  const float *__restrict across = columns.field[BallLines::kAcross];
  const float *__restrict along = columns.field[BallLines::kAlong];
  const float *__restrict tx = columns.field[BallLines::kTx], *__restrict ty = columns.field[BallLines::kTy];
  const float *__restrict base = columns.field[BallLines::kBase];
  const float *__restrict rises = columns.field[BallLines::kRise];
  const float *__restrict falls = columns.field[BallLines::kFall];
  const float *__restrict slopes = columns.field[BallLines::kSlope];
  const float *__restrict lowest = columns.field[BallLines::kLowest];
  const float *__restrict length = columns.field[BallLines::kLength];
  const float *__restrict clip_low = columns.field[BallLines::kClipLow];
  const float *__restrict clip_high = columns.field[BallLines::kClipHigh];
  const float *__restrict tip_low = columns.field[BallLines::kTipLow];
  const float *__restrict tip_least = columns.field[BallLines::kTipLeast];
  const float *__restrict stretch = columns.field[BallLines::kStretch];
  const float *__restrict lag_reach = columns.field[BallLines::kLagReach];
  const float *__restrict low_lag = columns.field[BallLines::kLowLag];
  const float *__restrict radii = columns.field[BallLines::kRadius];
  const float *__restrict flats = columns.field[BallLines::kFlat];
  const float *__restrict slacks = columns.field[BallLines::kSlack];
#pragma omp simd
  for (std::size_t i = 0; i < count; ++i) {
    const float radius = radii[i], flat = kHasSlack ? flats[i] : 0.0f, radius2 = radius * radius,
                half_curve = 0.5f / radius, end = length[i];
    const float ahead = tx[i] * square.x + ty[i] * square.y, aside = tx[i] * square.y - ty[i] * square.x;
    const float q = across[i] + aside, s = along[i] + ahead, rise = rises[i], fall = falls[i];
    const float slack = kHasSlack ? slacks[i] : kRounding_mm;
    const float side = square.half * (std::abs(tx[i]) + std::abs(ty[i])),
                right = kHasSlack ? bridged(q - side, flat) : q - side;
    const float left = kHasSlack ? bridged(q + side, flat) : q + side;
    const float middle = base[i] + rise * ahead - fall * aside;
    const float spread = side * std::abs(rise);

    // Lowest: the endless line's, or, past an end, what the nearest tip can leave.
    float at = lowest[i] > right ? lowest[i] : right;
    at = at < left ? at : left;
    const float endless = middle - spread - fall * (at - q) + stretch[i] * at * at * half_curve;
    const float off = std::abs(q) - side, near = off > 0.0f ? off : 0.0f;
    const float before = -s - side, after = s - end - side, out = before > after ? before : after;
    const float past = out > 0.0f ? out : 0.0f, d2 = near * near + past * past;
    const float d = std::sqrt(d2) - flat, steep = lean * radius, far = d > steep ? d : steep;
    const float capped = tip_least[i] + far * (far * half_curve - lean);
    const float held = past > 0.0f ? capped : endless;
    const float rim = kHasSlack ? radius + flat + slack : radius;
    // Sums of zeros and infinities instead of conditions: those would keep the loop from being a vector one.
    const float r2 = radius2 - right * right, l2 = radius2 - left * left, w2 = r2 < l2 ? r2 : l2;
    const float w_right = std::sqrt(r2 > 0.0f ? r2 : 0.0f), w_left = std::sqrt(l2 > 0.0f ? l2 : 0.0f);
    const float lag = low_lag[i] * (w_right < w_left ? w_right : w_left);
    const float gone = (before + lag > clip_low[i] ? kInfinity : 0.0f) +
                       (after > clip_high[i] ? kInfinity : 0.0f) +
                       (d2 > kBeyondRim * rim * rim ? kInfinity : 0.0f);
    lower[i] = (held > endless ? held : endless) - slack + gone;

    // A shift of the path is not much more on the surface where that is not near upright.
    const float least2 = kHasSlack ? 0.25f * radius2 : 0.0f;

    // Highest: the endless line's at either side, else the ball standing at the nearest tip.
    const float at_right = fall * side - stretch[i] * w_right, at_left = -fall * side - stretch[i] * w_left;
    const float inside = middle + spread + stretch[i] * radius + (at_right > at_left ? at_right : at_left);
    float c = s > 0.0f ? s : 0.0f;
    c = c < end ? c : end;
    const float farthest = std::abs(s - c) + side + (flat < 0.0f ? -flat : 0.0f);
    const float v2 = w2 - farthest * farthest;
    const float down = -fall * right > -fall * left ? -fall * right : -fall * left;
    const float standing =
        tip_low[i] + rise * c + down + slopes[i] * farthest + (radius - std::sqrt(v2 > 0.0f ? v2 : 0.0f));
    const float inner = s - side - lag_reach[i], outer = end - s - side, room = inner < outer ? inner : outer;
    const float if_inside = inside + (w2 > least2 ? 0.0f : kInfinity);
    const float if_standing = standing + (v2 > least2 ? 0.0f : kInfinity);
    upper[i] = (room >= 0.0f ? if_inside : if_standing) + slack + gone;
  }
}

ASPERITY_WIDE
void bounds_of_balls(const Columns &columns, std::size_t count, CellSquare square, float lean, float *lower,
                     float *upper) {
  bounds_over<false>(columns, count, square, lean, lower, upper);
}

ASPERITY_WIDE
void bounds_with_slack(const Columns &columns, std::size_t count, CellSquare square, float lean, float *lower,
                       float *upper) {
  bounds_over<true>(columns, count, square, lean, lower, upper);
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
  kept_.resize(room);
}

void BallLines::add(const FloorStroke &stroke, const Flank &ball, const LeaningPlane &level,
                    std::int32_t index) {
  make_room(count_ + 1);
  const std::size_t i = count_++;
  const Vec2 d = level.middle - stroke.low, t = stroke.low_along;
  const double m = stroke.slope, g = stroke.stretch, s = glm::dot(d, t);
  const double low = stroke.z_mm - level.z_mm, radius_mm = ball.corner;
  const auto set = [&](Field field, double value) { field_[field][i] = static_cast<float>(value); };
  set(kAcross, cross(t, d));
  set(kAlong, s);
  set(kTx, t.x);
  set(kTy, t.y);
  set(kBase, low + m * s - radius_mm * m * m / (1.0 + g)); // 1 - g, without cancellation
  set(kRise, m);
  set(kFall, 0.0);
  set(kLowest, 0.0);
  set(kSlope, 0.0);
  set(kLength, stroke.length_mm);
  const double slack = kJoint_mm + kJointShare * stroke.length_mm;
  set(kClipLow, std::min(stroke.clip_low_mm + slack, double(kFar_mm)));
  set(kClipHigh, std::min(stroke.clip_high_mm + slack, double(kFar_mm)));
  set(kTipLow, low);
  set(kTipLeast, low);
  set(kStretch, g);
  set(kLagReach, radius_mm * m / g);
  set(kLowLag, ball.flat >= 0.0 ? stroke.low_lag * (1.0 - kJointShare) : 0.0);
  set(kRadius, radius_mm);
  set(kFlat, ball.flat);
  has_slack_ = has_slack_ || ball.flat != 0.0 || stroke.slack_mm > 0.0;
  set(kSlack, double(kRounding_mm) + std::abs(ball.flat) * m + stroke.slack_mm);
  stroke_[i] = index;
  lean_ = 0.0f;
}

void BallLines::lean(Vec2 gradient) {
  const auto gx = static_cast<float>(gradient.x), gy = static_cast<float>(gradient.y);
  lean_ = std::hypot(gx, gy);
  for (std::size_t i = 0; i < count_; ++i) {
    const float tx = field_[kTx][i], ty = field_[kTy][i];
    const float ahead = gx * tx + gy * ty, aside = gy * tx - gx * ty;
    field_[kRise][i] -= ahead;
    field_[kFall][i] = aside;
    field_[kLowest][i] = field_[kRadius][i] * aside / field_[kStretch][i];
    field_[kSlope][i] = std::abs(ahead);
    // The low end seen from the tile's middle: back along the line and across it.
    field_[kTipLow][i] += ahead * field_[kAlong][i] + aside * field_[kAcross][i];
    field_[kTipLeast][i] = field_[kTipLow][i] + std::min(0.0f, field_[kRise][i] * field_[kLength][i]);
    field_[kSlack][i] += std::abs(field_[kFlat][i]) * lean_;
  }
}

void BallLines::measure(const CellSquare &square) {
  Columns columns;
  for (std::size_t f = 0; f < kFields; ++f)
    columns.field[f] = field_[f].data();
  const auto bounds = has_slack_ ? bounds_with_slack : bounds_of_balls;
  bounds(columns, (count_ + kLanes - 1) / kLanes * kLanes, square, lean_, lower_.data(), upper_.data());
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
  const double q = double(bridged(field_[kAcross][best], field_[kFlat][best]));
  const double radius = double(field_[kRadius][best]);
  const double w2 = radius * radius - q * q;
  const double ahead = double(field_[kRise][best]);
  const double aside = w2 > 0.0 ? double(field_[kStretch][best]) * q / std::sqrt(w2) : 0.0;
  const Vec2 t(double(field_[kTx][best]), double(field_[kTy][best]));
  return ahead * t + aside * left_of(t);
}

void BallLines::keep_lowest(const BallLines &all, float ceiling) {
  make_room(all.count_);
  const float least = std::min(all.least_upper(), ceiling);
  count_ = 0;
  for (std::uint32_t i = 0; i < all.count_; ++i) {
    kept_[count_] = i;
    count_ += (all.lower_[i] <= least) & (all.lower_[i] < kInfinity);
  }
  lean_ = all.lean_;
  has_slack_ = all.has_slack_;
  const std::size_t fields = has_slack_ ? kFields : kFlat;
  for (std::size_t f = 0; f < fields; ++f) {
    const float *from = all.field_[f].data();
    float *to = field_[f].data();
    for (std::size_t k = 0; k < count_; ++k)
      to[k] = from[kept_[k]];
  }
  for (std::size_t k = 0; k < count_; ++k)
    stroke_[k] = all.stroke_[kept_[k]];
}

} // namespace asperity
