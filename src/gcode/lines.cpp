// Splits the text of a program into lines, whatever ends them.
#include "lines.h"

#include "scanner.h"

#include <algorithm>

namespace asperity::gcode {

std::optional<std::string_view> Lines::next() {
  if (rest_.empty())
    return {};
  const auto is_line_end = [](char c) { return c == '\n' || c == '\r'; };
  const auto end =
      static_cast<std::size_t>(std::find_if(rest_.begin(), rest_.end(), is_line_end) - rest_.begin());
  const std::string_view line = rest_.substr(0, end);
  const bool has_two = rest_.substr(end, 2) == "\r\n";
  rest_.remove_prefix(std::min(rest_.size(), end + (has_two ? 2 : 1)));
  return line;
}

std::string_view without_blanks_around(std::string_view text) {
  while (!text.empty() && is_blank(text.front()))
    text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back()))
    text.remove_suffix(1);
  return text;
}

bool is_program_number(std::string_view line) {
  Scanner scanner(line);
  if (!scanner.take('o') && !scanner.take(':'))
    return false;
  if (!is_digit(scanner.peek()))
    return false;
  while (is_digit(scanner.peek()))
    scanner.advance();
  return scanner.at_end() || scanner.peek() == '(' || scanner.peek() == ';';
}

std::size_t length_without_tail_comment(std::string_view line) {
  bool is_in_comment = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == ';' && !is_in_comment)
      return i;
    if (line[i] == '(' || line[i] == ')')
      is_in_comment = line[i] == '(';
  }
  return line.size();
}

} // namespace asperity::gcode
