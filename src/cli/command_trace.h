// `asperity trace`: one line over one feature as a stylus would run it, printed and written.
#pragma once

#include "exit_status.h"
#include "trace_place.h"

#include <filesystem>

namespace asperity {

struct TraceCommand {
  std::filesystem::path job_file;
  TraceWish wish;
  std::filesystem::path folder;  ///< empty = none; else <feature>-along-<s>.csv and .png in it
  std::filesystem::path csv;     ///< empty = none
  std::filesystem::path picture; ///< empty = none
  int threads = 0;               ///< 0 = all cores
};

ExitStatus command_trace(const TraceCommand &command);

} // namespace asperity
