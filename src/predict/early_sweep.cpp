#include "early_sweep.h"

#include <utility>

namespace asperity {

bool EarlySweep::chart_is_ready() {
  const std::lock_guard lock(mutex_);
  has_chart_ = true;
  return begins();
}

bool EarlySweep::add(std::shared_ptr<const SweptPath> stretch) {
  const std::lock_guard lock(mutex_);
  waiting_.push_back(std::move(stretch));
  return begins();
}

std::shared_ptr<const SweptPath> EarlySweep::take() {
  const std::lock_guard lock(mutex_);
  if (waiting_.empty()) {
    is_taken_ = false;
    return nullptr;
  }
  std::shared_ptr<const SweptPath> next = std::move(waiting_.front());
  waiting_.pop_front();
  return next;
}

bool EarlySweep::begins() {
  if (!has_chart_ || is_taken_ || waiting_.empty())
    return false;
  return is_taken_ = true;
}

} // namespace asperity
