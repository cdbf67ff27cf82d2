// The options of `asperity view`.
#pragma once

#include "command_view.h"

#include <CLI/CLI.hpp>

namespace asperity {

void add_view(CLI::App &app, ViewCommand &command);

} // namespace asperity
