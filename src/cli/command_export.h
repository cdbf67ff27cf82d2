// `asperity export`: the predicted surface for other programs.
#pragma once

#include "asperity/sheet/export.h"
#include "exit_status.h"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace asperity {

struct ExportCommand {
  std::filesystem::path job_file;
  std::filesystem::path gltf, stl, csv; ///< empty = not asked for
  std::size_t cells = kExportCells;
  int threads = 0; ///< 0 = all cores
  bool quiet = false;
};

void add_export(CLI::App &app, ExportCommand &command);
ExitStatus command_export(const ExportCommand &command);

} // namespace asperity
