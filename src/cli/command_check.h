// `asperity check`: read job and program, say what is wrong with them, predict nothing.
#pragma once

#include "exit_status.h"

#include <filesystem>

namespace asperity {

ExitStatus command_check(const std::filesystem::path &job_file);

} // namespace asperity
