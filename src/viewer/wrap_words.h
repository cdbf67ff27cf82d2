// Text in lines: broken at spaces only, and never between a number and its unit.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace asperity {

/// Width of a piece of text, in the unit of the width asked for.
using TextWidth = std::function<double(std::string_view)>;

/// `text` with line breaks in place of some spaces, so that no line is wider than `width` unless a single
/// word is.
std::string wrap_words(std::string_view text, double width, const TextWidth &width_of);

} // namespace asperity
