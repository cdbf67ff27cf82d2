// A place in one line of a program; blanks do not count and letters have no case.
#pragma once

#include <string>
#include <string_view>

namespace asperity::gcode {

inline bool is_blank(char c) { return c == ' ' || c == '\t'; }
inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_letter(char c) { return c >= 'a' && c <= 'z'; }
inline char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
inline char upper(char c) { return is_letter(c) ? static_cast<char>(c - 'a' + 'A') : c; }

class Scanner {
public:
  explicit Scanner(std::string_view text) : text_(text) { skip_blanks(); }

  /// The next character in lower case, blanks skipped; '\0' at the end of the line.
  char peek() const { return at_ < text_.size() ? lower(text_[at_]) : '\0'; }
  bool at_end() const { return at_ >= text_.size(); }
  void advance() {
    ++at_;
    skip_blanks();
  }
  /// Steps over `c` if it is next.
  bool take(char c);
  /// Steps over `name` (lower case) if it is next, blanks between its letters allowed.
  bool take(std::string_view name);
  /// The letters up to the next other character.
  std::string take_letters();
  /// From the next character to the end, blanks and all.
  std::string_view rest() const { return text_.substr(at_ < text_.size() ? at_ : text_.size()); }
  /// Steps over `count` characters of rest().
  void skip(std::size_t count) {
    at_ += count;
    skip_blanks();
  }
  /// Of the next character, from 1.
  int column() const { return static_cast<int>(at_) + 1; }

private:
  void skip_blanks() {
    while (at_ < text_.size() && is_blank(text_[at_]))
      ++at_;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

/// How a character is written in a message: itself in quotes, or its code when it cannot be printed.
std::string quoted(char c);

} // namespace asperity::gcode
