// Branch-free loops, for the compiler to vectorise.
#include "tooth_rays.h"

#include "asperity/base/wide_vectors.h"

#include <array>

namespace asperity {
namespace {

/// Adding and taking away 1.5 x 2^23 rounds a small float to the nearest whole number.
constexpr float kRounder = 12582912.0f;
/// Passes that are looked at together.
constexpr std::size_t kAtOnce = 6;
using Six = std::array<float, kAtOnce>;

ASPERITY_INTO_WIDE float off_whole(float turns) { return turns - ((turns + kRounder) - kRounder); }

ASPERITY_INTO_WIDE float least(float a, float b) { return a < b ? a : b; }

ASPERITY_INTO_WIDE float least_of_six(float at, const Six &pass) {
  const float d0 = at - pass[0], d1 = at - pass[1], d2 = at - pass[2];
  const float d3 = at - pass[3], d4 = at - pass[4], d5 = at - pass[5];
  return least(least(least(d0 * d0, d1 * d1), least(d2 * d2, d3 * d3)), least(d4 * d4, d5 * d5));
}

ASPERITY_WIDE
void nearest_of_six(const float *__restrict at, Six pass, float *__restrict square, std::size_t count) {
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k)
    square[k] = least_of_six(at[k], pass);
}

ASPERITY_WIDE
void nearer_of_six(const float *__restrict at, Six pass, float *__restrict square, std::size_t count) {
#pragma omp simd
  for (std::size_t k = 0; k < count; ++k)
    square[k] = least(least_of_six(at[k], pass), square[k]);
}

} // namespace

void nearest_passes(std::span<const float> place, std::span<const float> pass, std::span<float> square) {
  for (std::size_t i = 0; i < pass.size(); i += kAtOnce) {
    Six six;
    for (std::size_t k = 0; k < kAtOnce; ++k) // the last is repeated: it changes nothing
      six[k] = pass[i + k < pass.size() ? i + k : pass.size() - 1];
    (i == 0 ? nearest_of_six : nearer_of_six)(place.data(), six, square.data(), place.size());
  }
}

ASPERITY_WIDE
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

ASPERITY_WIDE
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
