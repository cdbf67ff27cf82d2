// Wrapping, padding and columns for plain text in a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// Columns the text takes in a terminal: code points of UTF-8 (every character counts as one).
std::size_t columns_of(std::string_view text);

/// The text without control characters, so that a name can never move the cursor or colour the screen.
std::string printable(std::string_view text);

/// Text padded with spaces on the right to `width` columns.
std::string padded(std::string_view text, std::size_t width);

/// Words of `text` in lines of at most `width` columns; the first line begins with `first`, others with
/// `indent` spaces. A word longer than the line stays whole. Ends with a line break.
std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::size_t indent);

/// Rows of cells as aligned columns, two spaces apart, each row on a line that begins with `indent` spaces.
std::string table(const std::vector<std::vector<std::string>> &rows, std::size_t indent);

} // namespace asperity
