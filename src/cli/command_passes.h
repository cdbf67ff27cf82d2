// `asperity passes`: write the job's planned passes as a program for the controller.
#pragma once

#include "exit_status.h"

#include <filesystem>

namespace asperity {

struct PassesRequest {
  std::filesystem::path job_file;
  std::filesystem::path program; ///< where the text goes; empty = the summary only
};

ExitStatus command_passes(const PassesRequest &request);

} // namespace asperity
