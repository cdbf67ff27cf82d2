// The program of a job, wherever it comes from.
#pragma once

#include "asperity/gcode/program.h"
#include "asperity/job/job.h"

#include <filesystem>
#include <optional>
#include <string>

namespace asperity {

/// The job's program: its file as read, or its planned passes written as RS-274 and read back.
struct JobProgram {
  Program program;
  std::string text;
};

/// Read by the job's own set-up: unit, block delete, cutters and their length offsets.
ReadOptions read_options(const Job &job);

/// What planned passes are called where a program's file name would stand.
std::filesystem::path planned_name(const Job &job);

/// Nothing is returned if there is any error.
std::optional<JobProgram> job_program(const Job &job, Problems &problems);

} // namespace asperity
