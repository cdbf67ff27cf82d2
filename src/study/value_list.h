// The list of values of one --vary, taken apart.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

std::string trimmed(std::string_view text);

/// Each as one TOML value; ranges are written out. Nothing, and `fault` says why, when the list is wrong.
std::optional<std::vector<std::string>> read_value_list(std::string_view text, std::string &fault);

} // namespace asperity
