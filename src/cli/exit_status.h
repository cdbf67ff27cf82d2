// What the program tells the shell.
#pragma once

namespace asperity {

enum class ExitStatus : int {
  all_well = 0,      ///< done, everything wanted is met, no danger found
  missed = 1,        ///< done, but a wanted value is missed or a danger was found
  wrong_input = 2,   ///< a file or an option is wrong, or a result could not be written
  interrupted = 130, ///< stopped by the user (128 + SIGINT)
};

} // namespace asperity
