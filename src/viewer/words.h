// What the trade's words mean, for whoever points at one.
#pragma once

#include <string_view>

namespace asperity {

/// Empty if the word is not in the list.
std::string_view meaning_of(std::string_view word);

} // namespace asperity
