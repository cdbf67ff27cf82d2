// `asperity compare`: several plans for one part in one table.
#pragma once

#include "command_compare_plans.h"

#include <CLI/CLI.hpp>

namespace asperity {

struct CompareCommand {
  PlansRequest plans;
  std::filesystem::path
      folder; ///< empty = none; else comparison.json, comparison.csv and difference pictures in it
  std::filesystem::path json, csv;
};

void add_compare(CLI::App &app, CompareCommand &command);
ExitStatus command_compare(const CompareCommand &command);

/// Options that all commands on several plans share.
void add_plan_options(CLI::App &command, PlansRequest &plans);

} // namespace asperity
