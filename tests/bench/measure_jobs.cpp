// Whole jobs against the time they would take on the machine, and reading against bare number parsing.
#include "bench/measure.h"

#include "bench/timing.h"
#include "bench/whole_job.h"

namespace asperity::bench {

std::vector<Measured> measure_jobs(const Effort &effort) {
  const DemoJob demo = demo_job();
  Seconds cut, whole;
  for (int i = 0; i < effort.baseline_tries; ++i) {
    cut.keep_least(time_of([&] {
      Stock stock = make_stock(demo.job, demo.path);
      walk_path(demo.job, demo.path, stock, Progress{});
    }));
    whole.keep_least(time_of([&] { predict(demo.job, demo.program, {.threads = 1}, Progress{}); }));
  }
  const char *meaning = "time on the machine / here";
  return {{"in-order cut of the demo job, 1 thread", meaning, demo.path.duration_s / cut.processor},
          {"whole demo job, 1 thread", meaning, demo.path.duration_s / whole.processor}};
}

std::vector<Measured> measure_reading(const Effort &effort) {
  const std::string text = long_program(effort.program_lines);
  Seconds reading, plain;
  double sum = 0.0;
  for (int i = 0; i < effort.baseline_tries; ++i) {
    reading.keep_least(time_of([&] {
      Problems problems;
      read_program_text(text, "long.ngc", {}, problems);
    }));
    plain.keep_least(time_of([&] { sum += sum_of_numbers(text); }));
  }
  return {{"reading a program of " + std::to_string(effort.program_lines) + " lines",
           "time / bare number parsing", reading.processor / plain.processor, 0, sum > 0.0 ? 100.0 : 0.0,
           true}};
}

} // namespace asperity::bench
