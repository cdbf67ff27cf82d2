// One line of a program split into words, with the column of each.
#include "block.h"

#include "expression.h"
#include "scanner.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

constexpr std::string_view kLetters = "ABCDFGHIJKLMNPQRSTXYZ"; // NISTIR 6556, table 3
constexpr std::size_t kMostNumberDigits = 5;

bool fail(Fault &fault, int column, std::string message, std::string remedy) {
  fault = {column, std::move(message), std::move(remedy)};
  return false;
}

/// N and up to five digits, only at the head of a line.
bool read_line_number(Scanner &scanner, Fault &fault, Complaints &complaints) {
  const int column = scanner.column();
  scanner.advance();
  std::size_t digits = 0;
  for (; is_digit(scanner.peek()); scanner.advance())
    ++digits;
  if (digits == 0 || scanner.peek() == '.')
    return fail(fault, column, "N needs a whole number without sign or point",
                "Write N10, or leave the N word out.");
  if (digits > kMostNumberDigits)
    complaints.departure_once(Once::long_number, column,
                              fmt::format("line number of {} digits; the standard allows 5", digits),
                              "Renumber, or leave the N words out.");
  return true;
}

bool read_comment(Scanner &scanner, Block &block, Fault &fault) {
  const int column = scanner.column();
  const std::string_view rest = scanner.rest();
  const std::size_t end = rest.find_first_of("()", 1);
  if (end == std::string_view::npos)
    return fail(fault, column, "the comment is not closed", "Close it with ')' on the same line.");
  if (rest[end] == '(')
    return fail(fault, column + static_cast<int>(end), "a comment inside a comment",
                "Use [ ] or nothing inside.");
  block.comment = rest.substr(1, end - 1);
  scanner.skip(end + 1);
  return true;
}

bool read_setting(Scanner &scanner, const ParameterTable &parameters, Block &block, Fault &fault) {
  scanner.advance();
  const std::optional<int> index = read_parameter_index(scanner, parameters, fault);
  if (!index)
    return false;
  if (!scanner.take('='))
    return fail(fault, scanner.column(), fmt::format("'=' is missing after #{}", *index),
                "Write #1=2 to set a parameter, X#1 to use it.");
  const std::optional<double> value = read_value(scanner, parameters, fault);
  if (!value)
    return false;
  block.settings.push_back({*index, *value});
  return true;
}

std::string remedy_for_letter(char letter) {
  if (letter == 'O')
    return "Take the O word out; sub-programs have to be written out in full.";
  if (letter == 'N')
    return "Put the line number first on its line.";
  return "Letters are A B C D F G H I J K L M N P Q R S T X Y Z.";
}

bool read_word(Scanner &scanner, const ParameterTable &parameters, Block &block, Fault &fault) {
  const int column = scanner.column();
  const char letter = upper(scanner.peek());
  if (letter == 'N')
    return fail(fault, column, "N word after other words", remedy_for_letter(letter));
  if (kLetters.find(letter) == std::string_view::npos)
    return fail(fault, column, fmt::format("{} words are not in the language", letter),
                remedy_for_letter(letter));
  scanner.advance();
  const std::optional<double> value = read_value(scanner, parameters, fault);
  if (!value)
    return false;
  if (letter == 'G' || letter == 'M') {
    (letter == 'G' ? block.g_words : block.m_words).push_back({*value, column});
    return true;
  }
  if (block.has(letter))
    return fail(fault, column, fmt::format("a second {} word on the line", letter), "Keep one of them.");
  block.set(letter, *value, column);
  return true;
}

bool read_item(Scanner &scanner, const ParameterTable &parameters, Block &block, Fault &fault) {
  const char c = scanner.peek();
  if (is_letter(c))
    return read_word(scanner, parameters, block, fault);
  if (c == '(')
    return read_comment(scanner, block, fault);
  if (c == '#')
    return read_setting(scanner, parameters, block, fault);
  return fail(fault, scanner.column(), fmt::format("{} cannot stand here", quoted(c)),
              "A line is made of words (a letter and a number), #settings and comments.");
}

} // namespace

void Block::clear() {
  g_words.clear();
  m_words.clear();
  settings.clear();
  comment = {};
  is_deletable = false;
  column_.fill(0);
}

int Block::first_axis_column() const {
  int first = 0;
  for (const char letter : {'X', 'Y', 'Z'}) {
    if (has(letter) && (first == 0 || column(letter) < first))
      first = column(letter);
  }
  return first;
}

bool read_block(std::string_view text, const ParameterTable &parameters, Block &block, Fault &fault,
                Complaints &complaints) {
  block.clear();
  Scanner scanner(text);
  block.is_deletable = scanner.take('/');
  if (block.is_deletable && scanner.peek() == '/') {
    complaints.departure_once(Once::double_slash, scanner.column(), "a // comment",
                              "The standard's comments are in ( ).");
    return true;
  }
  if (scanner.peek() == 'n' && !read_line_number(scanner, fault, complaints))
    return false;
  while (!scanner.at_end()) {
    if (scanner.peek() == ';') {
      block.comment = scanner.rest().substr(1);
      break;
    }
    if (!read_item(scanner, parameters, block, fault))
      return false;
  }
  return true;
}

} // namespace asperity::gcode
