// The options of `asperity study` and what belongs to it.
#pragma once

#include "command_study.h"

#include <CLI/CLI.hpp>

namespace asperity {

void add_study(CLI::App &app, StudyCommand &command);

} // namespace asperity
