// A long list of equal values, set by all threads: the first touch of memory costs more than the setting.
#pragma once

#include "asperity/base/large_array.h"
#include "asperity/base/parallel.h"

#include <algorithm>

namespace asperity {

template <class T> LargeArray<T> filled_list(std::size_t count, T value, int threads) {
  static_assert(std::is_arithmetic_v<T>, "others are set by resize() already");
  constexpr std::size_t kBand = std::size_t{1} << 16;
  LargeArray<T> list;
  list.resize(count);
  for_each_band(count, kBand, threads, [&](std::size_t begin, std::size_t end) {
    std::fill(list.data() + begin, list.data() + end, value);
  });
  return list;
}

} // namespace asperity
