// Angles that carry their sine and cosine, one or eight at a time.
#pragma once

#include "asperity/base/eight.h"
#include "asperity/base/wide_vectors.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace asperity {

/// An angle with its sine and cosine.
struct Turn {
  double rad = 0, sin = 0, cos = 1;
};

/// a + b, its sine and cosine from theirs.
ASPERITY_INTO_WIDE Turn sum_of(const Turn &a, const Turn &b) {
  return {a.rad + b.rad, a.sin * b.cos + a.cos * b.sin, a.cos * b.cos - a.sin * b.sin};
}

/// Marks round the circle: near enough for a short series between them.
inline constexpr int kMarksPerPi = 36;

/// An angle no larger than the way from a mark to the next: series to the last digit.
ASPERITY_INTO_WIDE Turn small_turn(double rad) {
  const double x = rad * rad;
  return {rad, rad * (1.0 - x / 6.0 * (1.0 - x / 20.0 * (1.0 - x / 42.0 * (1.0 - x / 72.0)))),
          1.0 - x / 2.0 * (1.0 - x / 12.0 * (1.0 - x / 30.0 * (1.0 - x / 56.0)))};
}

inline constexpr int kMostMarks = 8 * kMarksPerPi;
/// From -kMostMarks to kMostMarks.
extern const std::array<Turn, 2 * kMostMarks + 1> kMarks;
inline const Turn &mark(int index) { return kMarks[static_cast<std::size_t>(index + kMostMarks)]; }

/// From the nearest mark; far away from the library. Sine and cosine are off by 2e-16 at most.
Turn turn_at(double rad);

/// Eight angles at a time.
struct alignas(64) Turns {
  Eight rad, sin, cos;
};

/// sum_of for eight angles.
ASPERITY_INTO_WIDE Turns sums_of(const Turns &a, const Turn &b) {
  Turns sum;
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    sum.rad[i] = a.rad[i] + b.rad;
    sum.sin[i] = a.sin[i] * b.cos + a.cos[i] * b.sin;
    sum.cos[i] = a.cos[i] * b.cos - a.sin[i] * b.sin;
  }
  return sum;
}

} // namespace asperity
