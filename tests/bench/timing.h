// Times pieces of work against each other on a machine that others use too.
#pragma once

#include <algorithm>
#include <chrono>
#include <ctime>
#include <limits>

namespace asperity::bench {

struct Seconds {
  double processor = std::numeric_limits<double>::infinity(); ///< of this thread only
  double wall = std::numeric_limits<double>::infinity();

  /// The least of several tries is the one least disturbed.
  void keep_least(Seconds other) {
    processor = std::min(processor, other.processor);
    wall = std::min(wall, other.wall);
  }
};

inline double thread_processor_s() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return double(now.tv_sec) + 1e-9 * double(now.tv_nsec);
}

template <class Work> Seconds time_of(const Work &work) {
  const auto begin = std::chrono::steady_clock::now();
  const double processor = thread_processor_s();
  work();
  return {thread_processor_s() - processor,
          std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count()};
}

} // namespace asperity::bench
