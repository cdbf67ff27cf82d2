// What every output repeats beside speeds, forces and programs.
#pragma once

#include <span>
#include <string_view>

namespace asperity {

/// Sentences for whoever runs the machine, in the order to read them.
std::span<const std::string_view> cautions();

} // namespace asperity
