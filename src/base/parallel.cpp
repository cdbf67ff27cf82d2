// Fixed bands of work, shared out over the threads of one arena.
#include "asperity/base/parallel.h"

#include <oneapi/tbb/info.h>
#include <oneapi/tbb/parallel_for.h>
#include <oneapi/tbb/partitioner.h>
#include <oneapi/tbb/task_arena.h>

#include <algorithm>
#include <cassert>

namespace asperity {

void for_each_band(std::size_t count, std::size_t band, int threads,
                   const std::function<void(std::size_t begin, std::size_t end)> &work) {
  assert(band > 0);
  const std::size_t bands = count / band + (count % band != 0 ? 1 : 0);
  const auto one_band = [&](std::size_t i) { work(i * band, std::min(count, (i + 1) * band)); };
  if (threads == 1 || bands <= 1) {
    for (std::size_t i = 0; i < bands; ++i)
      one_band(i);
    return;
  }
  // More threads than cores would only make the library complain on the error stream.
  const int cores = tbb::info::default_concurrency();
  tbb::task_arena arena(threads > 0 ? std::min(threads, cores) : cores);
  arena.execute([&] { tbb::parallel_for(std::size_t{0}, bands, one_band, tbb::simple_partitioner{}); });
}

} // namespace asperity
