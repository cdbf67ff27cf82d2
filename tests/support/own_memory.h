// What the system says this process holds.
#pragma once

#include <fstream>
#include <string>

namespace asperity::test {

/// A figure of /proc/self/status, given there in kibibytes [bytes]; 0 if there is none of that name.
inline double own_bytes(const std::string &key) {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (double kib = 0; word == key && status >> kib)
      return 1024.0 * kib;
  return 0.0;
}

} // namespace asperity::test
