// Fixed bands of work, shared out over the threads of one arena.
#include "asperity/base/parallel.h"

#include <oneapi/tbb/info.h>
#include <oneapi/tbb/parallel_for.h>
#include <oneapi/tbb/partitioner.h>
#include <oneapi/tbb/task_arena.h>
#include <oneapi/tbb/task_group.h>

#include <algorithm>
#include <cassert>
#include <exception>
#include <utility>

namespace asperity {

namespace {

/// Does this thread work for some call already? Then what it calls is shared out among that call's threads:
/// in an arena of its own it would wait in vain for those that have nothing left to do in the outer one.
thread_local bool is_at_work = false;

class AtWork {
public:
  AtWork() : before_(std::exchange(is_at_work, true)) {}
  ~AtWork() { is_at_work = before_; }
  AtWork(const AtWork &) = delete;
  AtWork &operator=(const AtWork &) = delete;

private:
  bool before_;
};

/// Calls work in an arena of so many threads, or in that of the outermost call.
template <class Work> void in_arena(int threads, const Work &work) {
  if (is_at_work)
    return work();
  // More threads than cores would only make the library complain on the error stream.
  const int cores = tbb::info::default_concurrency();
  tbb::task_arena arena(threads > 0 ? std::min(threads, cores) : cores);
  arena.execute(work);
}

/// Within an arena.
template <class Item> void share_out(std::size_t count, const Item &item) {
  tbb::parallel_for(
      std::size_t{0}, count,
      [&](std::size_t i) {
        const AtWork here;
        item(i);
      },
      tbb::simple_partitioner{});
}

} // namespace

void for_each_band(std::size_t count, std::size_t band, int threads,
                   const std::function<void(std::size_t begin, std::size_t end)> &work) {
  assert(band > 0);
  const std::size_t bands = band_count(count, band);
  const auto one_band = [&](std::size_t i) { work(i * band, std::min(count, (i + 1) * band)); };
  if (threads == 1 || bands <= 1) {
    for (std::size_t i = 0; i < bands; ++i)
      one_band(i);
    return;
  }
  in_arena(threads, [&] { share_out(bands, one_band); });
}

struct SideTasks::Group {
  bool is_shared = false; ///< by several threads
  tbb::task_group tasks;

  /// Takes part until all are done, even where something was thrown.
  void finish(const std::exception_ptr &before) {
    try {
      tasks.wait();
    } catch (...) {
      if (!before)
        throw;
    }
    if (before)
      std::rethrow_exception(before);
  }
};

void SideTasks::add(std::function<void()> task) {
  if (!group_.is_shared)
    return task();
  group_.tasks.run([task = std::move(task)] {
    const AtWork here;
    task();
  });
}

void side_by_side(const std::vector<std::function<void(SideTasks &)>> &works, int threads) {
  SideTasks::Group group;
  SideTasks tasks(group);
  const auto one = [&](std::size_t i) { works[i](tasks); };
  if (threads == 1) {
    for (std::size_t i = 0; i < works.size(); ++i)
      one(i);
    return;
  }
  group.is_shared = true;
  in_arena(threads, [&] {
    std::exception_ptr thrown;
    try {
      share_out(works.size(), one);
    } catch (...) {
      thrown = std::current_exception();
    }
    group.finish(thrown);
  });
}

} // namespace asperity
