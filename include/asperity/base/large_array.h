// Lists that may outgrow memory: long ones lie in a file without a name, which the system pages in and out.
#pragma once

#include <cstddef>
#include <memory>
#include <new>
#include <type_traits>
#include <vector>

namespace asperity {

/// A list longer than this lies on the disk [bytes].
inline constexpr std::size_t kOnDiskFrom_bytes = std::size_t{1} << 27;

/// Room there is on the disk for such lists, in the folder TMPDIR or else /var/tmp [bytes]; 0 where that
/// folder cannot be written or is itself kept in memory.
double disk_room_bytes();

/// Any number of bytes, as that number wants to be kept; in memory where the disk takes no more. Throws
/// std::bad_alloc.
void *take_bytes(std::size_t bytes);
/// As many as were taken.
void give_bytes_back(void *place, std::size_t bytes) noexcept;

/// Allocator of LargeArray. Numbers without a value keep whatever the memory holds: resize(n) touches
/// nothing, so that threads can fill a long list side by side (filled_list.h); resize(n, value) sets them.
template <class T> struct OnDiskIfLong {
  using value_type = T;
  using is_always_equal = std::true_type;

  OnDiskIfLong() = default;
  template <class U> OnDiskIfLong(const OnDiskIfLong<U> &) noexcept {}

  T *allocate(std::size_t count) {
    if (count > static_cast<std::size_t>(-1) / sizeof(T))
      throw std::bad_array_new_length();
    return static_cast<T *>(take_bytes(count * sizeof(T)));
  }
  void deallocate(T *place, std::size_t count) noexcept { give_bytes_back(place, count * sizeof(T)); }
  template <class U> void construct(U *place) {
    if constexpr (!std::is_arithmetic_v<U>)
      std::construct_at(place);
  }
  template <class U> bool operator==(const OnDiskIfLong<U> &) const noexcept { return true; }
};

/// A vector whose elements the system may put on the disk once there are many: what it holds then counts as
/// the system's cache, not as the process's own memory.
template <class T> using LargeArray = std::vector<T, OnDiskIfLong<T>>;

} // namespace asperity
