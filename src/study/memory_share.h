// Memory shared by predictions that run at once.
#pragma once

#include "asperity/base/progress.h"

#include <condition_variable>
#include <mutex>

namespace asperity {

class MemoryShare {
public:
  explicit MemoryShare(double total_bytes) : total_bytes_(total_bytes) {}

  double total_bytes() const { return total_bytes_; }
  /// Waits until there is room beside the others; false when cancelled. More than the total is never given.
  bool take(double bytes, const Progress &progress);
  /// The same without waiting: false when there is no room now.
  bool take_now(double bytes);
  void give_back(double bytes);

private:
  const double total_bytes_;
  double taken_bytes_ = 0;
  std::mutex mutex_;
  std::condition_variable changed_;
};

} // namespace asperity
