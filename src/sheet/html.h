// Text that goes into the sheet: escaped, valid, and with its units set well.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// For text and attribute values alike. Bytes that are not UTF-8 become U+FFFD; control characters, and those
/// that turn the writing direction, are left out.
std::string escaped(std::string_view text);

/// For JSON inside a script element: nothing can end it early.
std::string script_safe(std::string json);

/// Escaped, with micrometres, degrees Celsius and unbreakable spaces before units.
std::string typeset(std::string_view text);

/// A value in the style of its unit, typeset.
std::string value_html(double value, std::string_view unit);

/// <ul> of typeset lines; empty without lines.
std::string list_html(const std::vector<std::string> &lines, std::string_view classes = {});

} // namespace asperity
