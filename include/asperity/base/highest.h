// The highest of many numbers, at the speed of memory.
#pragma once

#include <span>

namespace asperity {

/// What is not a number does not count; minus infinity of none.
float highest(std::span<const float> values);

} // namespace asperity
