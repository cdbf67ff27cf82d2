// `asperity calibrate`: uncertain values fitted to what was measured.
#pragma once

#include "asperity/calibrate/calibration.h"
#include "exit_status.h"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace asperity {

struct CalibrateCommand {
  std::filesystem::path job_file, measured_file;
  std::filesystem::path output; ///< empty = the file's text is printed
  CalibrationOptions options;
};

void add_calibrate(CLI::App &app, CalibrateCommand &command);
ExitStatus command_calibrate(const CalibrateCommand &command);

} // namespace asperity
