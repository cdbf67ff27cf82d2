// Whole jobs against the time they would take on the machine, and reading against bare number parsing.
#include "bench/measure.h"

#include "bench/timing.h"
#include "bench/whole_job.h"

namespace asperity::bench {

std::vector<Measured> measure_jobs(const Effort &effort) {
  const DemoJob demo = demo_job();
  const std::string text = long_program(effort.program_lines);
  Seconds cut, whole, reading, plain;
  for (int i = 0; i < effort.baseline_tries; ++i) {
    cut.keep_least(time_of([&] {
      Stock stock = make_stock(demo.job, demo.path);
      walk_path(demo.job, demo.path, stock, Progress{});
    }));
    whole.keep_least(time_of([&] { predict(demo.job, demo.program, {.threads = 1}, Progress{}); }));
    reading.keep_least(time_of([&] {
      Problems problems;
      read_program_text(text, "long.ngc", {}, problems);
    }));
    double sum = 0.0;
    plain.keep_least(time_of([&] { sum += sum_of_numbers(text); }));
  }
  return {{"in-order cut of the demo job, 1 thread", demo.path.duration_s / cut.processor, -1, 0, false,
           "time on the machine / here"},
          {"whole demo job, 1 thread", demo.path.duration_s / whole.processor, -1, 0, false,
           "time on the machine / here"},
          {"reading a long program", reading.processor / plain.processor, -1, 0, true,
           "time / bare number parsing"}};
}

} // namespace asperity::bench
