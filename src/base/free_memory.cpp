// Asks the system, and the control group that a batch scheduler may have set (version 2).
#include "asperity/base/free_memory.h"

#include <algorithm>
#include <fstream>
#include <string>

namespace asperity {

namespace {

constexpr double kUnknown = 1e18;

/// The number behind a word of a file of words and numbers.
double number_behind(const char *file, const std::string &wanted, double otherwise) {
  std::ifstream text(file);
  for (std::string word; text >> word;)
    if (double value = 0; word == wanted && text >> value)
      return value;
  return otherwise;
}

/// "max" and a file that is not there leave the default.
double number_in(const char *file, double otherwise) {
  double value = 0;
  return std::ifstream(file) >> value ? value : otherwise;
}

/// The group's limit less what it holds beside files, which give way.
double free_in_group_bytes() {
  const char *shares = "/sys/fs/cgroup/memory.stat";
  const double limit = number_in("/sys/fs/cgroup/memory.max", kUnknown);
  const double used = number_in("/sys/fs/cgroup/memory.current", 0.0);
  const double files =
      number_behind(shares, "active_file", 0.0) + number_behind(shares, "inactive_file", 0.0);
  return std::max(0.0, limit - std::max(0.0, used - files));
}

} // namespace

double free_memory_bytes() {
  constexpr double kBytesPerKib = 1024.0;
  return std::min(kBytesPerKib * number_behind("/proc/meminfo", "MemAvailable:", kUnknown / kBytesPerKib),
                  free_in_group_bytes());
}

} // namespace asperity
