// The bore's tooth passes against laying them plainly.
#include "bench/measure.h"

#include "bench/timing.h"
#include "bench/wall_laps.h"
#include "bench/wall_source.h"

#include "asperity/texture/wall_texture.h"

namespace asperity::bench {

namespace {

/// Passes of lap k reach only the top k mm: 6.0e6 pairs of row and tooth pass in all.
double pairs(const WallCase &job) {
  double sum = 0;
  for (int lap = 0; lap < kLaps; ++lap)
    for (std::size_t row = 0; row < job.rows; ++row)
      sum += row_mm(job, row) >= lap_tip_mm(lap) ? kPassesPerLap : 0;
  return sum;
}

Seconds laid_plainly(const WallCase &job, const Effort &effort) {
  std::vector<double> e(job.columns * job.rows, 1.0);
  Seconds part = time_of([&] { lay_passes_plainly(e, job, 1000, effort.wall_passes); });
  const double scale = pairs(job) / (double(effort.wall_passes) * double(job.rows));
  return {part.processor * scale, part.wall * scale};
}

} // namespace

std::vector<Measured> measure_wall(const Effort &effort) {
  const WallCase uniform;
  Seconds plain, texture;
  const WallSource source = wall_source();
  for (int i = 0; i < effort.baseline_tries; ++i) {
    plain.keep_least(laid_plainly(uniform, effort));
    WallChart strip = wall_strip(effort.texture_columns);
    texture.keep_least(time_of([&] { sweep_wall_with_marks(strip, source.source(), 1, Progress{}); }));
  }
  const double whole = double(uniform.columns) / double(effort.texture_columns);
  return {{"wall with marks as a feature's strip, 1 thread", plain.processor / (texture.processor * whole),
           -1, 0, false, "plain / strip"}};
}

} // namespace asperity::bench
