// Split work into bands whose results never depend on the thread count.
#pragma once

#include <cstddef>
#include <functional>

namespace asperity {

/// Bands that so many items make, the last one often shorter.
constexpr std::size_t band_count(std::size_t items, std::size_t band) { return (items + band - 1) / band; }

/// Calls work(begin, end) over [0, count) cut into fixed bands of `band` items, on at most `threads` threads
/// (0 = all cores; within the work of another call no more than that call's). A thread that waits may
/// meanwhile do other bands of any call above it, so hold no lock while calling. The bands are the same
/// whatever the thread count, so order-free work gives the same bits.
void for_each_band(std::size_t count, std::size_t band, int threads,
                   const std::function<void(std::size_t begin, std::size_t end)> &work);

} // namespace asperity
