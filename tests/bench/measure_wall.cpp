// The bore's tooth passes against laying them plainly.
#include "bench/measure.h"

#include "bench/timing.h"
#include "bench/wall_laps.h"
#include "bench/wall_source.h"

#include "asperity/texture/wall_texture.h"

namespace asperity::bench {

namespace {

constexpr double kNmPerMm = 1e6;

/// Passes of lap k reach only the top k mm: 6.0e6 pairs of row and tooth pass in all.
double pairs(const WallCase &job) {
  double sum = 0;
  for (int lap = 0; lap < kLaps; ++lap)
    for (std::size_t row = 0; row < job.rows; ++row)
      sum += row_mm(job, row) >= lap_tip_mm(lap) ? kPassesPerLap : 0;
  return sum;
}

/// A part of the plain way, scaled to the whole.
Seconds laid_plainly(const WallCase &job, const Effort &effort) {
  std::vector<double> e(job.columns * job.rows, 1.0);
  const Seconds part = time_of([&] { lay_passes_plainly(e, job, 1000, effort.wall_passes); });
  const double scale = pairs(job) / (double(effort.wall_passes) * double(job.rows));
  return {part.processor * scale, part.wall * scale};
}

struct WallTimes {
  Seconds plain, one, two;
  double error_nm = 0;
};

WallTimes timed(const WallCase &job, const Effort &effort) {
  const std::vector<ToothLap> laps = tooth_laps(job);
  const WallChart fresh = bore_chart(job.columns);
  WallTimes times;
  WallChart chart = fresh;
  for (int i = 0; i < effort.tries; ++i) {
    if (i < effort.baseline_tries)
      times.plain.keep_least(laid_plainly(job, effort));
    for (const int threads : {1, 2}) {
      chart.envelope_mm = fresh.envelope_mm;
      (threads == 1 ? times.one : times.two).keep_least(time_of([&] {
        lay_tooth_passes(chart, laps, threads, Progress{});
      }));
    }
  }
  times.error_nm = kNmPerMm * worst_wall_error_mm(chart.envelope_mm, job, effort.checked_cells);
  return times;
}

} // namespace

std::vector<Measured> measure_wall(const Effort &effort) {
  constexpr double kMostError_nm = 0.1;
  const WallTimes uniform = timed({}, effort), varying = timed({.has_varying_feed = true}, effort);
  const char *meaning = "exact scalar / kernel";
  return {{"wall, 37,500 tooth passes, 1 thread", meaning, uniform.plain.processor / uniform.one.processor, 0,
           320, false, uniform.error_nm, kMostError_nm},
          {"wall, 37,500 tooth passes, 2 threads", meaning, uniform.plain.processor / uniform.two.wall, 2500,
           0, false, uniform.error_nm, kMostError_nm},
          {"the same with varying feed, 1 thread", meaning, varying.plain.processor / varying.one.processor,
           0, 85, false, varying.error_nm, kMostError_nm},
          {"the same with varying feed, 2 threads", meaning, varying.plain.processor / varying.two.wall, 500,
           0, false, varying.error_nm, kMostError_nm},
          {"two threads against one, wall, varying feed", "time of 1 / of 2",
           varying.one.wall / varying.two.wall, 1.8}};
}

std::vector<Measured> measure_strip(const Effort &effort) {
  const WallCase job;
  const WallSource source = wall_source();
  Seconds plain, strip;
  for (int i = 0; i < effort.baseline_tries; ++i) {
    plain.keep_least(laid_plainly(job, effort));
    WallChart chart = bore_chart(effort.texture_columns);
    strip.keep_least(time_of([&] { sweep_wall_with_marks(chart, source.source(), 1, Progress{}); }));
  }
  const double whole = double(job.columns) / double(effort.texture_columns);
  return {{"the same wall as a strip of a feature (bent path, owners), 1 thread", "exact scalar / strip",
           plain.processor / (strip.processor * whole)}};
}

} // namespace asperity::bench
