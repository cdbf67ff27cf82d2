// The options of `asperity picture`.
#pragma once

#include "command_picture.h"

#include <CLI/CLI.hpp>

namespace asperity {

void add_picture(CLI::App &app, PictureRequest &request);

} // namespace asperity
