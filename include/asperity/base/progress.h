// How far a long run has come, and the wish to stop it.
#pragma once

#include <atomic>
#include <functional>
#include <string_view>

namespace asperity {

/// Passed down a run. `report` may be empty; it is called from the calling thread only.
class Progress {
public:
  std::function<void(std::string_view stage, double fraction)> report;
  const Progress *heeds = nullptr; ///< the wish to stop that counts here too; may be none

  void at(std::string_view stage, double fraction) const {
    if (report)
      report(stage, fraction);
  }
  void cancel() { cancelled_.store(true, std::memory_order_relaxed); }
  bool cancelled() const {
    return cancelled_.load(std::memory_order_relaxed) || (heeds != nullptr && heeds->cancelled());
  }

private:
  std::atomic<bool> cancelled_{false};
};

} // namespace asperity
