// The text form of STL: solid, facet, outer loop, vertex x y z.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/base/vec.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// True when the first word is "solid", in any case.
bool begins_like_text_stl(std::string_view bytes);

/// Triangles in order. Problems carry the line; reading goes on after each.
std::vector<std::array<Vec3, 3>> read_text_stl(std::string_view bytes, const std::string &file,
                                               Problems &problems);

} // namespace asperity
