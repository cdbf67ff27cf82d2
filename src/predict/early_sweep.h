// A feature's stretches of path that are cut already and wait to be swept.
#pragma once

#include "asperity/sweep/swept_path.h"

#include <deque>
#include <memory>
#include <mutex>

namespace asperity {

/// One thread at a time takes them, in order; any may add.
class EarlySweep {
public:
  /// These return true if the caller is to see that they are taken: there is a chart, and nobody does yet.
  bool chart_is_ready();
  bool add(std::shared_ptr<const SweptPath> stretch);

  /// The next; null once there is none: whoever adds one sees to it.
  std::shared_ptr<const SweptPath> take();

private:
  bool begins();

  std::mutex mutex_;
  std::deque<std::shared_ptr<const SweptPath>> waiting_;
  bool has_chart_ = false, is_taken_ = false;
};

} // namespace asperity
