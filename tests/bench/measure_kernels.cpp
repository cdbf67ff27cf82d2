// Innermost loops of the floor sweep against the same closed form in scalar double precision.
#include "bench/measure.h"

#include "bench/timing.h"

#include "sweep/floor_block.h"

#include <cmath>

#if defined(__GNUC__) && !defined(__clang__)
#define ASPERITY_BENCH_SCALAR __attribute__((noinline, optimize("no-tree-vectorize")))
#else
#define ASPERITY_BENCH_SCALAR
#endif

namespace asperity::bench {

namespace {

constexpr int kCalls = 20000;
/// Measured: 5.5 to 10 between ends, 8 to 18 on endless lines; with vectors lost 1 to 2 (all on two makes of
/// processor, busy and quiet).
constexpr double kLeastBetweenEnds = 2.7, kLeastEndless = 3.5;
constexpr std::size_t kCells = FloorBlock::kCells;

struct Heights {
  std::array<double, kCells> height{};
  std::array<std::int32_t, kCells> winner{};
};

/// A ball on a line between its ends, cell by cell.
ASPERITY_BENCH_SCALAR void lower_plainly(Heights &heights, const BallSpanOverBlock &span,
                                         std::int32_t stroke) {
  const double radius = double(span.line.radius), lag = double(span.lag);
  for (std::size_t k = 0; k < kCells; ++k) {
    const double x = double(k % 8) - 3.5, y = double(k / 8) - 3.5;
    const double q =
        double(span.line.across) + double(span.line.across_x) * x + double(span.line.across_y) * y;
    const double s = double(span.along_x) * x + double(span.along_y) * y;
    const double c = std::fmin(std::fmax(s - lag * std::sqrt(radius * radius - q * q), double(span.begin)),
                               double(span.end));
    const double d2 = q * q + (c - s) * (c - s);
    const double z =
        double(span.line.base) + double(span.slope) * (c - s) + radius - std::sqrt(radius * radius - d2);
    if (z < heights.height[k]) {
      heights.height[k] = z;
      heights.winner[k] = stroke;
    }
  }
}

/// Lines step aside from call to call, so that there is always something to take.
BallSpanOverBlock span_of(int call) {
  const float aside = 0.4f - 1e-5f * float(call % 1000);
  const BallLineOverBlock line{aside, 0.004f, 0.02f, -1e-6f * float(call), 0.0f, 0.0f, 1.0f, 3.0f};
  return {line, 0.0f, 0.02f, -0.004f, 0.01f, -5.0f, 5.0f, 0.01f};
}

template <class Call> double processor_s(const Effort &effort, const Call &call) {
  Seconds best;
  for (int i = 0; i < effort.tries; ++i)
    best.keep_least(time_of([&] {
      for (int k = 0; k < kCalls; ++k)
        call(k);
    }));
  return best.processor;
}

} // namespace

std::vector<Measured> measure_kernels(const Effort &effort) {
  FloorBlock block{};
  block.clear(kCalls);
  Heights plain;
  plain.height.fill(1.0);
  const double scalar = processor_s(effort, [&](int k) { lower_plainly(plain, span_of(k), k); });
  const double span = processor_s(effort, [&](int k) { lower_block_under(block, span_of(k), k); });
  const double line = processor_s(effort, [&](int k) { lower_block_under(block, span_of(k).line, k); });
  const double close =
      processor_s(effort, [&](int k) { lower_block_close_under(block, span_of(k).line, k); });
  const char *meaning = "scalar / kernel";
  return {{"kernel: ball between a line's ends", meaning, scalar / span, 0, kLeastBetweenEnds},
          {"kernel: ball on an endless line", meaning, scalar / line, 0, kLeastEndless},
          {"kernel: the same close by", meaning, scalar / close, 0, kLeastEndless}};
}

} // namespace asperity::bench
