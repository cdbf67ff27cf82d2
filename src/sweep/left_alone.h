// Room for many plain values that threads fill side by side, without setting it first.
#pragma once

#include "asperity/base/large_array.h"

#include <memory>
#include <type_traits>
#include <utility>

namespace asperity {

/// Allocator whose elements keep whatever the memory holds until they are written: resize() touches nothing,
/// so the first touch, which costs as much as the filling, is shared by the threads too.
template <class T> struct LeftAlone : OnDiskIfLong<T> {
  static_assert(std::is_trivially_copyable_v<T> && std::is_trivially_destructible_v<T>);
  template <class U> struct rebind { using other = LeftAlone<U>; };
  template <class U> void construct(U *) noexcept {}
  template <class U, class First, class... Rest> void construct(U *place, First &&first, Rest &&...rest) {
    std::construct_at(place, std::forward<First>(first), std::forward<Rest>(rest)...);
  }
};

} // namespace asperity
