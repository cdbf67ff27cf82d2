// `asperity view`: one or two jobs in a window.
#pragma once

#include "exit_status.h"

#include <filesystem>
#include <vector>

namespace asperity {

struct ViewCommand {
  std::vector<std::filesystem::path> jobs;
  int threads = 0; ///< 0 = all cores
  /// Hidden, for tests and documentation.
  std::filesystem::path picture, report;
  std::string keys;                ///< pressed before the picture
  int width_px = 0, height_px = 0; ///< 0 = as at the last time
  double scale = 0;                ///< 0 = as at the last time
  bool dark = false, light = false;
};

ExitStatus command_view(const ViewCommand &command);

} // namespace asperity
