// Branch-free loops, for the compiler to vectorise.
#include "tooth_rays.h"

#include "vector_clones.h"

#include <array>

namespace asperity {
namespace {

/// Adding and taking away 1.5 x 2^23 rounds a small float to the nearest whole number.
constexpr float kRounder = 12582912.0f;
constexpr std::size_t kAtOnce = 4;

inline __attribute__((always_inline)) float off_whole(float turns) {
  return turns - ((turns + kRounder) - kRounder);
}

inline __attribute__((always_inline)) float least_of_four(float at,
                                                          const std::array<float, kAtOnce> &offset) {
  const float f0 = off_whole(at + offset[0]), f1 = off_whole(at + offset[1]);
  const float f2 = off_whole(at + offset[2]), f3 = off_whole(at + offset[3]);
  const float s0 = f0 * f0, s1 = f1 * f1, s2 = f2 * f2, s3 = f3 * f3;
  const float a = s0 < s1 ? s0 : s1, b = s2 < s3 ? s2 : s3;
  return a < b ? a : b;
}

ASPERITY_VECTOR_CLONES
void nearest_of_four(const float *__restrict turns, std::array<float, kAtOnce> offset,
                     float *__restrict square, std::size_t count) {
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k)
    square[k] = least_of_four(turns[k], offset);
}

ASPERITY_VECTOR_CLONES
void nearer_of_four(const float *__restrict turns, std::array<float, kAtOnce> offset,
                    float *__restrict square, std::size_t count) {
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k) {
    const float least = least_of_four(turns[k], offset);
    square[k] = least < square[k] ? least : square[k];
  }
}

} // namespace

void nearest_passes(std::span<const float> turns, std::span<const float> offset, std::span<float> square) {
  for (std::size_t i = 0; i < offset.size(); i += kAtOnce) {
    std::array<float, kAtOnce> four;
    for (std::size_t k = 0; k < kAtOnce; ++k) // the last is repeated: it changes nothing
      four[k] = offset[i + k < offset.size() ? i + k : offset.size() - 1];
    (i == 0 ? nearest_of_four : nearer_of_four)(turns.data(), four, square.data(), turns.size());
  }
}

ASPERITY_VECTOR_CLONES
void lower_to_bow(std::span<const float> square, const ToothBow &per_turn, std::span<float> e_mm) {
  const ToothBow bow = per_turn;
  const float *__restrict x = square.data();
  float *__restrict e = e_mm.data();
  const std::size_t count = square.size();
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k) {
    const float height = bow.base + x[k] * (bow.bow + bow.bow4 * x[k]);
    e[k] = height < e[k] ? height : e[k];
  }
}

ASPERITY_VECTOR_CLONES
void lower_to_passes(const VaryingTurns &at, float offset, const ToothBow &bow_of_tooth,
                     std::span<float> e_mm) {
  const ToothBow bow = bow_of_tooth;
  const float *__restrict turns = at.turns.data(), *__restrict length = at.length_mm.data(),
                          *__restrict change = at.half_change_mm.data();
  float *__restrict e = e_mm.data();
  const std::size_t count = e_mm.size();
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k) {
    const float f = off_whole(turns[k] + offset), d = f * (length[k] - f * change[k]), x = d * d;
    const float height = bow.base + x * (bow.bow + bow.bow4 * x);
    e[k] = height < e[k] ? height : e[k];
  }
}

} // namespace asperity
