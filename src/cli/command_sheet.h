// `asperity sheet`: one HTML file that shows plans and the choice between them.
#pragma once

#include "command_compare_plans.h"

#include <CLI/CLI.hpp>

namespace asperity {

struct SheetCommand {
  PlansRequest plans;
  std::filesystem::path file;
  std::string title; ///< empty = what the jobs' titles share
};

void add_sheet(CLI::App &app, SheetCommand &command);
ExitStatus command_sheet(const SheetCommand &command);

} // namespace asperity
