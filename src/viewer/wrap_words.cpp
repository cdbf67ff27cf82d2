// Text in lines: broken at spaces only, and never between a number and its unit.
#include "wrap_words.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr std::size_t kLongestUnit = 6; ///< "mm/min"

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// End of what stays together from `begin` on: one word, or a number and its unit.
std::size_t end_of_group(std::string_view text, std::size_t begin) {
  const std::size_t end = std::min(text.find_first_of(" \n", begin), text.size());
  if (end == text.size() || text[end] == '\n' || end == begin || !is_digit(text[end - 1]) ||
      !is_digit(text[begin]))
    return end;
  const std::size_t unit_end = std::min(text.find_first_of(" \n", end + 1), text.size());
  const bool is_unit = unit_end > end + 1 && unit_end - end - 1 <= kLongestUnit && !is_digit(text[end + 1]);
  return is_unit ? unit_end : end;
}

} // namespace

std::string wrap_words(std::string_view text, double width, const TextWidth &width_of) {
  std::string lines(text);
  std::size_t line = 0; // where the line begun begins
  for (std::size_t begin = 0; begin < text.size();) {
    if (begin > 0 && text[begin - 1] == '\n')
      line = begin;
    const std::size_t end = end_of_group(text, begin);
    if (begin > line && width_of(text.substr(line, end - line)) > width) {
      lines[begin - 1] = '\n';
      line = begin;
    }
    begin = end + 1;
  }
  return lines;
}

} // namespace asperity
