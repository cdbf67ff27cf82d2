// Angles that carry their sine and cosine, one or eight at a time.
#pragma once

#include "asperity/base/wide_vectors.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace asperity {

/// An angle with its sine and cosine.
struct Turn {
  double rad = 0, sin = 0, cos = 1;
};

inline Turn turn_at(double rad) { return {rad, std::sin(rad), std::cos(rad)}; }

/// a + b, its sine and cosine from theirs.
inline Turn sum_of(const Turn &a, const Turn &b) {
  return {a.rad + b.rad, a.sin * b.cos + a.cos * b.sin, a.cos * b.cos - a.sin * b.sin};
}

/// Eight angles at a time, for vectors.
inline constexpr std::size_t kTurns = 8;
struct alignas(64) Turns {
  std::array<double, kTurns> rad, sin, cos;
};

/// sum_of for eight angles.
ASPERITY_INTO_WIDE Turns sums_of(const Turns &a, const Turn &b) {
  Turns sum;
#pragma omp simd
  for (std::size_t i = 0; i < kTurns; ++i) {
    sum.rad[i] = a.rad[i] + b.rad;
    sum.sin[i] = a.sin[i] * b.cos + a.cos[i] * b.sin;
    sum.cos[i] = a.cos[i] * b.cos - a.sin[i] * b.sin;
  }
  return sum;
}

} // namespace asperity
