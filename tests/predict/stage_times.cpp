// Where the time of a job goes: every stage by itself, then whole predictions and what-ifs. Not a test: it
// prints. stage_times JOB.toml THREADS
#include "asperity/chart/chart.h"
#include "asperity/cut/walk.h"
#include "asperity/passes/job_program.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/predict/repredictor.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

#include <fmt/format.h>

#include <cstdlib>
#include <ctime>
#include <functional>

namespace asperity {
namespace {

double seconds_of(clockid_t clock) {
  timespec now{};
  clock_gettime(clock, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

template <class Work> auto timed(const std::string &name, const Work &work) {
  const double wall = seconds_of(CLOCK_MONOTONIC), cpu = seconds_of(CLOCK_PROCESS_CPUTIME_ID);
  auto result = work();
  fmt::print("{:<28} wall {:7.3f} s   processor {:7.3f} s\n", name, seconds_of(CLOCK_MONOTONIC) - wall,
             seconds_of(CLOCK_PROCESS_CPUTIME_ID) - cpu);
  std::fflush(stdout);
  return result;
}

bool sweep(Chart &chart, const SweptPath &swept, int threads) {
  const Progress silent;
  return std::holds_alternative<WallChart>(chart)
             ? sweep_wall(std::get<WallChart>(chart), swept, threads, silent)
             : sweep_floor(std::get<FloorChart>(chart), swept, threads, silent);
}

void print_stages(const Job &job, const Program &program, int threads) {
  const Progress silent;
  const TimedPath path =
      timed("path", [&] { return plan_motion(program, job.machine, job.setup, job.effects); });
  Stock stock = timed("stock", [&] { return make_stock(job, path, threads); });
  const CutRecord cut = timed("cut in time order", [&] { return walk_path(job, path, stock, silent); });
  std::vector<Chart> charts;
  for (const Feature &feature : job.features) {
    charts.push_back(
        timed("chart of " + name_of(feature), [&] { return make_chart(job, feature, threads); }));
    timed("sweep of " + name_of(feature), [&] { return sweep(charts.back(), cut.swept, threads); });
  }
  for (std::size_t i = 0; i < charts.size(); ++i)
    timed("roughness of " + name_of(job.features[i]), [&] {
      return roughness_of(job.features[i], charts[i], {job, path, cut.swept}, threads, silent);
    });
  timed("findings", [&] { return find_all({job, path, cut, charts, threads}); });
}

void print_what_ifs(const Job &job, const Program &program, const PredictOptions &options) {
  Repredictor kept;
  timed("whole", [&] { return kept.predict(job, program, options, Progress{}); });
  const auto again = [&](const char *name, const std::function<void(Job &)> &change) {
    Job changed = job;
    change(changed);
    Repredictor from_here = kept;
    timed(name, [&] { return from_here.predict(changed, program, options, Progress{}); });
  };
  again("what if: nothing", [](Job &) {});
  again("what if: z zero", [](Job &j) { j.setup.z_zero_error_mm += 0.02; });
  again("what if: runout", [](Job &j) { j.cutters[0].runout_mm += 0.01; });
  again("what if: stick-out", [](Job &j) { j.cutters[0].stick_out_mm += 2.0; });
  again("what if: stiffness", [](Job &j) { j.machine.stiffness_xy_N_per_um *= 1.2; });
  again("what if: strength", [](Job &j) { j.material.break_stress_MPa *= 0.8; });
  again("what if: own roughness", [](Job &j) { j.material.own_ra_high_um += 1.0; });
}

int run(const char *file, int threads) {
  Problems problems;
  const std::optional<Job> job = read_job(file, problems);
  const std::optional<JobProgram> program = job ? job_program(*job, problems) : std::nullopt;
  for (const Problem &problem : problems.all())
    fmt::print("{}", text_of(problem));
  if (!program)
    return EXIT_FAILURE;
  fmt::print("{} moves, {} thread(s)\n", program->program.moves.size(), threads);
  print_stages(*job, program->program, threads);
  print_what_ifs(*job, program->program, {.threads = threads});
  return EXIT_SUCCESS;
}

} // namespace
} // namespace asperity

int main(int count, char **words) {
  if (count != 3) {
    fmt::print("stage_times JOB.toml THREADS\n");
    return EXIT_FAILURE;
  }
  return asperity::run(words[1], std::atoi(words[2]));
}
