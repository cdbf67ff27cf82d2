// Whole runs of the shipped sheave, its cut in time order, and a long program to read.
#pragma once

#include "asperity/cut/walk.h"
#include "asperity/gcode/program.h"
#include "asperity/job/job.h"
#include "asperity/predict/outcome.h"

#include <cstddef>
#include <string>

namespace asperity::bench {

struct DemoJob {
  Job job;
  Program program;
  TimedPath path;
};

DemoJob demo_job();
/// Short feed lines and arcs, with words as programs have them.
std::string long_program(std::size_t lines);
/// The plain way to read it: every number of every line by the library's own parser, nothing else.
double sum_of_numbers(const std::string &text);

} // namespace asperity::bench
