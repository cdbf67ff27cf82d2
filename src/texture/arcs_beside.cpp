// Cuts the known line or arc with circles about the points.
#include "arcs_beside.h"

#include "asperity/base/wide_vectors.h"

#include <cmath>

namespace asperity {

namespace {

constexpr double kMostSine = 0.1;
/// Where the circle comes over the point at a flatter angle to the way than this, rounding is seen.
constexpr double kLeastClosing = 0.05, kLeastClosingSquare = kLeastClosing * kLeastClosing;

/// Of a sine up to kMostSine; the first term left out is 945 / 42240 sin^11.
ASPERITY_INTO_WIDE double small_angle(double sine) {
  const double x = sine * sine;
  return sine * (1.0 + x * (1.0 / 6.0 + x * (3.0 / 40.0 + x * (15.0 / 336.0 + x * (105.0 / 3456.0)))));
}

ASPERITY_INTO_WIDE bool is_small(double sine, double cosine) {
  return cosine > 0 && std::abs(sine) <= kMostSine;
}

/// Across the line the point stands where it stands; along it, the circle's half chord ahead or behind.
ASPERITY_WIDE void on_line(const ArcMet &met, const Eight &x_mm, ArcsBeside &beside) {
  const double hx = met.heading.x, hy = met.heading.y, before = -met.before_mm, after = met.after_mm;
  const double ahead = glm::dot(met.heading, met.to_point), left = cross(met.heading, met.to_point);
  const double square = glm::dot(met.to_point, met.to_point), per_square = 1.0 / square;
  const double side = ahead < 0 ? -1.0 : 1.0;
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double left_there = left - hy * x_mm[i];
    const double chord_square = square - left_there * left_there;
    const double ahead_there = side * std::sqrt(chord_square > 0 ? chord_square : 0.0);
    const double along = hx * x_mm[i] - (ahead_there - ahead);
    const double sine = per_square * (ahead * left_there - left * ahead_there);
    const double cosine = per_square * (ahead * ahead_there + left * left_there);
    beside.along_mm[i] = along;
    beside.angle_rad[i] = small_angle(sine);
    beside.found[i] = chord_square > kLeastClosingSquare * square && is_small(sine, cosine) &&
                              along >= before && along < after
                          ? 1.0
                          : 0.0;
  }
}

/// Centre, point and axis make a triangle of known sides.
ASPERITY_WIDE void on_arc(const ArcMet &met, const Eight &x_mm, ArcsBeside &beside) {
  const double radius = 1.0 / met.turn_per_mm, before = -met.before_mm, after = met.after_mm;
  const Vec2 axis = -radius * left_of(met.heading), spoke = axis + met.to_point;
  const double ax = axis.x, ay = axis.y, sx = spoke.x, sy = spoke.y, tx = met.to_point.x, ty = met.to_point.y;
  const double radius_square = radius * radius, per_radius_square = 1.0 / radius_square;
  const double square = tx * tx + ty * ty, per_square = 1.0 / square;
  const double turn = cross(spoke, axis) < 0 ? -1.0 : 1.0;
  const double least_off = kLeastClosingSquare * square * radius_square;
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double x = sx + x_mm[i];
    const double away_square = x * x + sy * sy, per_away = 1.0 / away_square;
    // Along the spoke and to its left, in spokes.
    const double on = 0.5 * (radius_square + away_square - square) * per_away;
    const double off_square = radius_square * per_away - on * on;
    const double off = turn * std::sqrt(off_square > 0 ? off_square : 0.0);
    const double ax_there = on * x - off * sy, ay_there = on * sy + off * x;
    const double tx_there = x - ax_there, ty_there = sy - ay_there;
    const double sine_along = per_radius_square * (ax * ay_there - ay * ax_there);
    const double cosine_along = per_radius_square * (ax * ax_there + ay * ay_there);
    const double sine = per_square * (tx * ty_there - ty * tx_there);
    const double cosine = per_square * (tx * tx_there + ty * ty_there);
    const double along = radius * small_angle(sine_along);
    beside.along_mm[i] = along;
    beside.angle_rad[i] = small_angle(sine);
    beside.found[i] = off_square * away_square * away_square > least_off &&
                              is_small(sine_along, cosine_along) && is_small(sine, cosine) &&
                              along >= before && along < after
                          ? 1.0
                          : 0.0;
  }
}

} // namespace

ArcsBeside arcs_beside(const ArcMet &met, const Eight &x_mm) {
  ArcsBeside beside;
  if (met.turn_per_mm == 0)
    on_line(met, x_mm, beside);
  else
    on_arc(met, x_mm, beside);
  return beside;
}

} // namespace asperity
