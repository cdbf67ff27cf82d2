// `asperity tolerance`: bands instead of numbers, from the shop's own errors.
#pragma once

#include "asperity/tolerance/tolerance.h"
#include "exit_status.h"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace asperity {

struct ToleranceCommand {
  std::filesystem::path job_file;
  ToleranceOptions options;
  std::filesystem::path json, csv; ///< empty = not written
};

void add_tolerance(CLI::App &app, ToleranceCommand &command);
ExitStatus command_tolerance(const ToleranceCommand &command);

} // namespace asperity
