// The files of shaders/ as they were when the program was built.
#pragma once

#include <span>
#include <string_view>

namespace asperity {

struct PackedShader {
  std::string_view file, text;
};

std::span<const PackedShader> packed_shaders();

} // namespace asperity
