// The middle value of what lies about every place of a row.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

/// Median of the 2 half + 1 values about each, round the row's end, which has at least as many; the mean of
/// the two middle ones where their number is even. NaN counts as none; NaN where there are none.
std::vector<float> moving_median(std::span<const float> values, std::size_t half);

} // namespace asperity
