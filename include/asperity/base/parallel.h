// Split work into bands whose results never depend on the thread count.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace asperity {

/// Bands that so many items make, the last one often shorter.
constexpr std::size_t band_count(std::size_t items, std::size_t band) { return (items + band - 1) / band; }

/// Calls work(begin, end) over [0, count) cut into fixed bands of `band` items, on at most `threads` threads
/// (0 = all cores; within the work of another call no more than that call's). A thread that waits may
/// meanwhile do other bands of any call above it, so hold no lock while calling. The bands are the same
/// whatever the thread count, so order-free work gives the same bits.
void for_each_band(std::size_t count, std::size_t band, int threads,
                   const std::function<void(std::size_t begin, std::size_t end)> &work);

/// Tasks that turn up while works go on side by side, for threads that have nothing else to do.
class SideTasks {
public:
  SideTasks(const SideTasks &) = delete;
  SideTasks &operator=(const SideTasks &) = delete;
  /// From within the works and from within other tasks.
  void add(std::function<void()> task);

private:
  friend void side_by_side(const std::vector<std::function<void(SideTasks &)>> &, int);
  struct Group;
  explicit SideTasks(Group &group) : group_(group) {}
  Group &group_;
};

/// Does the works, as bands of for_each_band, and all tasks that they add. Throws what one of them threw. On
/// one thread the works are done in order, and each task as soon as it is added.
void side_by_side(const std::vector<std::function<void(SideTasks &)>> &works, int threads);

} // namespace asperity
