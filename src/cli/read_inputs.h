// Job and program read together, with everything wrong in either shown at once.
#pragma once

#include "asperity/gcode/program.h"
#include "asperity/job/job.h"

#include <filesystem>
#include <optional>
#include <string>

namespace asperity {

struct Inputs {
  Job job;
  Program program;
  std::string program_text;
};

/// The program is read by the job's own set-up. Nothing is returned if there is any error.
std::optional<Inputs> read_inputs(const std::filesystem::path &job_file, Problems &problems);

/// All problems, one after the other, without characters that could steer a terminal.
std::string text_of(const Problems &problems);

} // namespace asperity
