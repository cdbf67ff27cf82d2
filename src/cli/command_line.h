// The program's commands and options, each described once.
#pragma once

namespace asperity {

/// Parses, runs the command and returns the exit status.
int run_command_line(int argc, const char *const *argv);

} // namespace asperity
