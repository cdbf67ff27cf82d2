// A bell-crank bush small enough to be predicted hundreds of times: one disc, its side cut in two levels.
#pragma once

#include "asperity/gcode/program.h"
#include "asperity/job/job.h"

namespace asperity::test_support {

struct BushJob {
  Job job;
  Program program;
};

/// Every uncertainty is 0 unless given; everything bends.
BushJob bush_job();

} // namespace asperity::test_support
