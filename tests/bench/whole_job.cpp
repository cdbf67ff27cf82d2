// Reads the shipped sheave and writes a long program.
#include "bench/whole_job.h"

#include <charconv>
#include <cstdio>
#include <stdexcept>

namespace asperity::bench {

DemoJob demo_job() {
  Problems problems;
  const auto job = read_job(std::string(ASPERITY_SOURCE_DIR) + "/scenes/sheave/plunge.toml", problems);
  if (!job)
    throw std::runtime_error("the demo job cannot be read");
  ReadOptions options;
  options.tools = {1};
  DemoJob demo{*job, read_program(job->program, options, problems), {}};
  demo.path = plan_motion(demo.program, demo.job.machine, demo.job.setup, demo.job.effects);
  return demo;
}

std::string long_program(std::size_t lines) {
  std::string text = "G21 G90 G17 G94\nT1 M6\nS18000 M3\nG0 X0 Y0 Z5\nG1 Z-1 F600\n";
  text.reserve(lines * 32);
  char line[96];
  for (std::size_t i = 5; i + 1 < lines; ++i) {
    const double x = 0.05 * double(i % 1000), y = 0.2 * double(i / 1000 % 500),
                 z = -1.0 - 0.0003 * double(i % 700);
    if (i % 10 == 9)
      std::snprintf(line, sizeof line, "G2 X%.4f Y%.4f I%.4f J0 F1200\n", x + 0.02, y, 0.5 * 0.02 + 0.025);
    else
      std::snprintf(line, sizeof line, "G1 X%.4f Y%.4f Z%.4f\n", x, y, z);
    text += line;
  }
  return text + "M2\n";
}

double sum_of_numbers(const std::string &text) {
  double sum = 0.0;
  const char *at = text.data(), *end = at + text.size();
  while (at < end) {
    double number = 0.0;
    const auto [next, fault] = std::from_chars(at, end, number);
    if (fault == std::errc()) {
      sum += number;
      at = next;
    } else {
      ++at;
    }
  }
  return sum;
}

} // namespace asperity::bench
