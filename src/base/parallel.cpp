// Fixed bands of work, shared out over the threads of one arena.
#include "asperity/base/parallel.h"

#include <oneapi/tbb/info.h>
#include <oneapi/tbb/parallel_for.h>
#include <oneapi/tbb/partitioner.h>
#include <oneapi/tbb/task_arena.h>

#include <algorithm>
#include <cassert>
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
  const auto share_out = [&] {
    tbb::parallel_for(
        std::size_t{0}, bands,
        [&](std::size_t i) {
          const AtWork here;
          one_band(i);
        },
        tbb::simple_partitioner{});
  };
  if (is_at_work)
    return share_out();
  // More threads than cores would only make the library complain on the error stream.
  const int cores = tbb::info::default_concurrency();
  tbb::task_arena arena(threads > 0 ? std::min(threads, cores) : cores);
  arena.execute(share_out);
}

} // namespace asperity
