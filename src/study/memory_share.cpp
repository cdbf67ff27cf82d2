// Memory shared by predictions that run at once.
#include "memory_share.h"

#include <chrono>

namespace asperity {

bool MemoryShare::take(double bytes, const Progress &progress) {
  using namespace std::chrono_literals;
  std::unique_lock lock(mutex_);
  while (taken_bytes_ + bytes > total_bytes_) {
    if (progress.cancelled() || bytes > total_bytes_)
      return false;
    changed_.wait_for(lock, 50ms);
  }
  taken_bytes_ += bytes;
  return true;
}

bool MemoryShare::take_now(double bytes) {
  const std::lock_guard lock(mutex_);
  if (taken_bytes_ + bytes > total_bytes_)
    return false;
  taken_bytes_ += bytes;
  return true;
}

void MemoryShare::give_back(double bytes) {
  const std::lock_guard lock(mutex_);
  taken_bytes_ -= bytes;
  changed_.notify_all();
}

} // namespace asperity
