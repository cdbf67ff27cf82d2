// Speed measurements: --table prints ratios to plain baselines, all else goes to Google Benchmark.
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
    char error[32] = "", goal[32] = "";
    if (row.error_nm >= 0)
      std::snprintf(error, sizeof error, "%.2f nm", row.error_nm);
    if (row.goal > 0)
      std::snprintf(goal, sizeof goal, "%s %g", row.is_at_most ? "<=" : ">=", row.goal);
    std::printf("| %s | %s | %.4g | %s | %s |\n", row.name.c_str(), row.meaning.c_str(), row.ratio, error,
                goal);
    std::fflush(stdout);
  }
}

void print_table(const Effort &effort) {
  std::printf("| case | ratio of | ratio | error | goal |\n|---|---|---|---|---|\n");
  print(measure_floor(effort));
  print(measure_growth(effort));
  print(measure_wall(effort));
  print(measure_jobs(effort));
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
  for (int i = 1; i < argc; ++i)
    if (std::strcmp(argv[i], "--table") == 0) {
      asperity::bench::print_table({});
      return 0;
    }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
