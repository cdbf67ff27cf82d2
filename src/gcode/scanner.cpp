// A place in one line of a program; blanks do not count and letters have no case.
#include "scanner.h"

#include <fmt/format.h>

namespace asperity::gcode {

bool Scanner::take(char c) {
  if (at_end() || peek() != c)
    return false;
  advance();
  return true;
}

bool Scanner::take(std::string_view name) {
  Scanner ahead = *this;
  for (const char c : name) {
    if (!ahead.take(c))
      return false;
  }
  *this = ahead;
  return true;
}

std::string Scanner::take_letters() {
  std::string letters;
  while (is_letter(peek())) {
    letters += peek();
    advance();
  }
  return letters;
}

std::string quoted(char c) {
  if (c == '\0')
    return "the end of the line";
  if (c < ' ' || c > '~')
    return fmt::format("a character of code {}", static_cast<unsigned char>(c));
  return fmt::format("'{}'", c);
}

} // namespace asperity::gcode
