// Splits the text of a program into lines, whatever ends them.
#pragma once

#include <optional>
#include <string_view>

namespace asperity::gcode {

/// Lines end with LF, CR or CR LF; the last may lack its end.
class Lines {
public:
  explicit Lines(std::string_view text) : rest_(text) {}

  /// The next line without its end; empty at the end of the text.
  std::optional<std::string_view> next();
  std::string_view rest() const { return rest_; }

private:
  std::string_view rest_;
};

std::string_view without_blanks_around(std::string_view text);

/// True for a program number, "O1234" or ":1234" with nothing after it but a comment.
bool is_program_number(std::string_view line);

/// Characters up to a ';' comment.
std::size_t length_without_tail_comment(std::string_view line);

} // namespace asperity::gcode
