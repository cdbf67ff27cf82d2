// Memory shared by predictions that run at once.
#include "memory_share.h"

#include <algorithm>
#include <chrono>
#include <fstream>
#include <string>

namespace asperity {

namespace {

constexpr double kUnknown = 1e18;

double available_bytes() {
  std::ifstream meminfo("/proc/meminfo");
  std::string key, unit;
  double kib = 0;
  while (meminfo >> key >> kib >> unit)
    if (key == "MemAvailable:")
      return kib * 1024.0;
  return kUnknown;
}

/// "max" and a file that is not there leave the default.
double number_in_file(const char *name, double otherwise) {
  double value = 0;
  return std::ifstream(name) >> value ? value : otherwise;
}

} // namespace

double free_memory_bytes() {
  // A batch scheduler limits a job by its control group (version 2).
  const double limit = number_in_file("/sys/fs/cgroup/memory.max", kUnknown);
  const double used = number_in_file("/sys/fs/cgroup/memory.current", 0.0);
  return std::min(available_bytes(), std::max(0.0, limit - used));
}

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
