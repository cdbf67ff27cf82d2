// Ctrl-C: the first asks the run to stop, the second ends the program at once, neither leaves half a file.
#pragma once

#include "asperity/base/progress.h"

namespace asperity {

/// While it lives, SIGINT and SIGTERM cancel `progress`. One at a time.
class Interrupt {
public:
  explicit Interrupt(Progress &progress);
  ~Interrupt();
  Interrupt(const Interrupt &) = delete;
  Interrupt &operator=(const Interrupt &) = delete;
};

} // namespace asperity
