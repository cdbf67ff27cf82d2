// Eight numbers at a time: what the widest vectors take at once.
#pragma once

#include <array>
#include <cstddef>

namespace asperity {

inline constexpr std::size_t kEight = 8;
using Eight = std::array<double, kEight>;

} // namespace asperity
