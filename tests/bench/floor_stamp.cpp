// The baseline of the floor measurements: a ball stamped along the path.
#include "bench/floor_paths.h"

#include <algorithm>
#include <cmath>

#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__)
#define ASPERITY_BENCH_CLONES __attribute__((target_clones("default", "avx2", "avx512f")))
#else
#define ASPERITY_BENCH_CLONES
#endif

namespace asperity::bench {

namespace {

/// Lowers one row of cells under the ball: `first_x` is the first cell's place from the ball's axis.
ASPERITY_BENCH_CLONES
void stamp_row(float *cells, int count, float first_x, float spacing, float w2, float centre_z) {
  for (int i = 0; i < count; ++i) {
    const float x = first_x + spacing * static_cast<float>(i);
    const float u2 = w2 - x * x;
    const float z = centre_z - std::sqrt(u2 > 0.0f ? u2 : 0.0f);
    cells[i] = z < cells[i] ? z : cells[i];
  }
}

void stamp_ball(FloorChart &chart, Vec3 tip) {
  const double h = chart.spacing_mm;
  const auto first = [&](double low) { return std::max(0, static_cast<int>(std::ceil(low / h))); };
  const int j0 = first(tip.y - kBall_mm - chart.origin_mm.y);
  const int j1 = std::min(int(chart.ny) - 1, int(std::floor((tip.y + kBall_mm - chart.origin_mm.y) / h)));
  for (int j = j0; j <= j1; ++j) {
    const double y = chart.y_mm(std::size_t(j)) - tip.y, w2 = kBall_mm * kBall_mm - y * y;
    if (w2 <= 0.0)
      continue;
    const double w = std::sqrt(w2);
    const int i0 = first(tip.x - w - chart.origin_mm.x);
    const int i1 = std::min(int(chart.nx) - 1, int(std::floor((tip.x + w - chart.origin_mm.x) / h)));
    if (i0 <= i1)
      stamp_row(&chart.envelope_mm[chart.at(std::size_t(i0), std::size_t(j))], i1 - i0 + 1,
                float(chart.x_mm(std::size_t(i0)) - tip.x), float(h), float(w2), float(tip.z + kBall_mm));
  }
}

} // namespace

void stamp(FloorChart &chart, const FloorCase &job, int stride) {
  const int steps = int(kSquare_mm / job.spacing_mm);
  for (int line = stride / 2; line < job.lines; line += stride)
    for (int i = 0; i <= steps; ++i) {
      const double x = -0.5 * kSquare_mm + job.spacing_mm * i;
      stamp_ball(chart, {x, line_y_mm(job, line), tip_mm(job, line, x)});
    }
}

} // namespace asperity::bench
