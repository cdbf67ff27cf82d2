// Speed measurements: --table prints ratios to plain baselines, --check holds a short form of it to wide
// limits, all else goes to Google Benchmark.
#include "bench/floor_paths.h"
#include "bench/measure.h"
#include "bench/whole_job.h"

#include "asperity/sweep/sweep_floor.h"

#include <benchmark/benchmark.h>

#include <cstdio>
#include <cstring>

namespace asperity::bench {
namespace {

void print(const std::vector<Measured> &rows) {
  for (const Measured &row : rows) {
    char error[32] = "", goal[64] = "";
    if (row.error_nm >= 0)
      std::snprintf(error, sizeof error, "%.3f nm", row.error_nm);
    if (row.goal > 0)
      std::snprintf(goal, sizeof goal, "%s %g: %s", row.is_at_most ? "<=" : ">=", row.goal,
                    row.meets(row.goal) ? "met" : "NOT met");
    std::printf("| %s | %s | %.4g | %s | %s |\n", row.name.c_str(), row.meaning.c_str(), row.ratio, error,
                goal);
    std::fflush(stdout);
  }
}

int print_table() {
  const Effort effort;
  std::printf("| case | ratio of | ratio | largest error | goal |\n|---|---|---|---|---|\n");
  for (const auto &measure : {measure_floor, measure_growth, measure_wall, measure_strip, measure_jobs,
                              measure_reading, measure_kernels})
    print(measure(effort));
  return 0;
}

/// Ratios only, never times, and processor time of one thread: the machine may be slow and busy.
int check() {
  const Effort effort{.tries = 3,
                      .baseline_tries = 2,
                      .stamp_stride = 50,
                      .wall_passes = 20,
                      .checked_cells = 400,
                      .program_lines = 50000};
  int failures = 0;
  for (const auto &measure :
       {measure_floor, measure_growth, measure_wall, measure_reading, measure_kernels}) {
    const std::vector<Measured> rows = measure(effort);
    print(rows);
    for (const Measured &row : rows) {
      if (row.guard > 0 && !row.meets(row.guard))
        std::printf("FAILED: %s: ratio %.4g, limit %g\n", row.name.c_str(), row.ratio, row.guard), ++failures;
      if (row.error_nm >= 0 && !row.is_exact())
        std::printf("FAILED: %s: error %.3f nm, limit %g\n", row.name.c_str(), row.error_nm,
                    row.most_error_nm),
            ++failures;
    }
  }
  return failures == 0 ? 0 : 1;
}

void floor_sweep(benchmark::State &state, const FloorCase &job) {
  const SweptPath path = path_of(job);
  for (auto _ : state) {
    state.PauseTiming();
    FloorChart chart = chart_of(job);
    state.ResumeTiming();
    sweep_floor(chart, path, static_cast<int>(state.range(0)), Progress{});
  }
  const double cells = kSquare_mm * kSquare_mm / (job.spacing_mm * job.spacing_mm);
  state.SetItemsProcessed(static_cast<std::int64_t>(cells) * state.iterations());
}
BENCHMARK_CAPTURE(floor_sweep, long_moves, FloorCase{})->Arg(1)->Arg(2)->UseRealTime();
BENCHMARK_CAPTURE(floor_sweep, tiny_moves, FloorCase{.moves_per_line = 1000})->Arg(1)->Arg(2)->UseRealTime();
BENCHMARK_CAPTURE(floor_sweep, curved, FloorCase{.moves_per_line = 1000, .wave_mm = 0.35})
    ->Arg(1)
    ->Arg(2)
    ->UseRealTime();

void read_long_program(benchmark::State &state) {
  const std::string text = long_program(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) {
    Problems problems;
    benchmark::DoNotOptimize(read_program_text(text, "long.ngc", {}, problems));
  }
  state.SetItemsProcessed(state.range(0) * state.iterations());
}
BENCHMARK(read_long_program)->Arg(1000000)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace asperity::bench

int main(int argc, char **argv) {
  for (int i = 1; i < argc; ++i) {
    if (std::strcmp(argv[i], "--table") == 0)
      return asperity::bench::print_table();
    if (std::strcmp(argv[i], "--check") == 0)
      return asperity::bench::check();
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
