// Reads a whole program: the frame of percent signs, program number and end round its lines.
#include "asperity/gcode/program.h"

#include "asperity/base/text_file.h"
#include "interpreter.h"
#include "lines.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity {
namespace gcode {
namespace {

constexpr std::size_t kLargestFile_bytes = std::size_t{1} << 30;
constexpr std::size_t kLongestLine = 256; // NISTIR 6556, 3.3
/// Moves kept at most; about 10 GB of them.
constexpr std::size_t kMostMoves = 40'000'000;

class ProgramReader {
public:
  ProgramReader(std::string_view text, const ReadOptions &options, Complaints &complaints, Program &program)
      : lines_(text), complaints_(complaints), program_(program), interpreter_(program, options, complaints) {
  }

  void read();

private:
  void read_line(std::string_view line);
  void read_percent(std::string_view after);
  bool take_program_number(std::string_view line);
  void check_length(std::string_view line);
  void check_end();

  Lines lines_;
  Complaints &complaints_;
  Program &program_;
  Interpreter interpreter_;
  bool is_first_ = true; ///< only blank lines so far
  bool is_opened_ = false;
  bool is_closed_ = false;
};

void ProgramReader::read() {
  while (!is_closed_ && !interpreter_.has_ended()) {
    const std::optional<std::string_view> line = lines_.next();
    if (!line)
      break;
    complaints_.begin_line(static_cast<int>(++program_.line_count));
    read_line(*line);
    if (program_.moves.size() > kMostMoves) {
      complaints_.error(0, fmt::format("more than {} moves", kMostMoves), "Split the program.");
      return;
    }
  }
  check_end();
}

void ProgramReader::read_line(std::string_view line) {
  const std::string_view trimmed = without_blanks_around(line);
  if (trimmed.empty())
    return;
  check_length(line);
  if (trimmed.front() == '%')
    read_percent(without_blanks_around(trimmed.substr(1)));
  else if (!take_program_number(trimmed))
    interpreter_.run_line(line);
  is_first_ = false;
}

/// The first line may open the program, a later one close it; a sign elsewhere is taken as a comment.
void ProgramReader::read_percent(std::string_view after) {
  if (is_first_)
    is_opened_ = true;
  if (is_first_ && after.empty())
    return;
  const bool nothing_follows =
      without_blanks_around(lines_.rest()).find_first_not_of("\r\n \t") == std::string::npos;
  if (!is_first_ && (is_opened_ || nothing_follows)) {
    is_closed_ = true;
    if (!is_opened_)
      complaints_.departure_once(Once::stray_percent, 1, "% at the end but none at the head",
                                 "Put % alone on the first line too, or take this one out.");
    return;
  }
  complaints_.departure_once(Once::stray_percent, 1, "a line with % is taken as a comment",
                             "Put % alone on the first and last lines only.");
}

/// O1234 or :1234 before any motion only names the program; it is no word of the language.
bool ProgramReader::take_program_number(std::string_view line) {
  if (!is_program_number(line) || interpreter_.has_moves())
    return false;
  complaints_.departure(1, "a program number is no word of the standard; passed over",
                        "Put it in a comment: (O1234).");
  return true;
}

void ProgramReader::check_length(std::string_view line) {
  if (line.size() <= kLongestLine)
    return;
  const std::string message =
      fmt::format("a line of {} characters; the standard allows {}", line.size(), kLongestLine);
  if (length_without_tail_comment(line) <= kLongestLine)
    complaints_.departure(static_cast<int>(kLongestLine) + 1, message, "Shorten the comment.");
  else
    complaints_.error(static_cast<int>(kLongestLine) + 1, message, "Split the line.");
}

void ProgramReader::check_end() {
  if (is_opened_ && !is_closed_ && (complaints_.strict() || !interpreter_.has_ended())) {
    Lines rest = lines_;
    while (const std::optional<std::string_view> line = rest.next())
      is_closed_ = is_closed_ || without_blanks_around(*line) == "%";
    if (!is_closed_)
      complaints_.departure(0, "the % at the head has no partner at the end",
                            "Put % alone on the last line.");
  } else if (!is_closed_ && !interpreter_.has_ended()) {
    complaints_.departure(0, "the program does not end with M2 or M30", "Put M30 on the last line.");
  }
}

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view kMark = "\xEF\xBB\xBF";
  return text.substr(0, kMark.size()) == kMark ? text.substr(kMark.size()) : text;
}

/// Room for one move a line, without trusting a file of empty lines.
std::size_t moves_to_expect(std::string_view text) {
  constexpr std::size_t kShortestMove = 8;
  const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
  return std::min({lines, text.size() / kShortestMove, kMostMoves / 8});
}

/// False, with a complaint, for what is no text of a program at all.
bool is_program_text(std::string_view text, Complaints &complaints) {
  if (text.find('\0') != std::string_view::npos) {
    complaints.error(0, "this is not a text file",
                     "Give the program as text, not as a picture, archive or mesh.");
    return false;
  }
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    complaints.error(0, "the program is empty", "Check that the post wrote the file to its end.");
    return false;
  }
  return true;
}

} // namespace
} // namespace gcode

Program without_moves(const Program &program) {
  return {program.file, {}, program.messages, program.line_count};
}

Program read_program_text(std::string_view text, const std::filesystem::path &file,
                          const ReadOptions &options, Problems &problems) {
  Program program;
  program.file = file;
  gcode::Complaints complaints(problems, file.string(), options.strict);
  text = gcode::without_byte_order_mark(text);
  if (!gcode::is_program_text(text, complaints))
    return program;
  const std::size_t errors_before = problems.error_count();
  program.moves.reserve(gcode::moves_to_expect(text));
  gcode::ProgramReader(text, options, complaints, program).read();
  if (program.moves.empty() && problems.error_count() == errors_before) {
    complaints.begin_line(0);
    complaints.error(0, "the program makes no move", "Check that it is the right file.");
  }
  return program;
}

Program read_program(const std::filesystem::path &file, const ReadOptions &options, Problems &problems) {
  const std::optional<std::string> text = read_file(file, gcode::kLargestFile_bytes, problems);
  if (!text) {
    Program program;
    program.file = file;
    return program;
  }
  return read_program_text(*text, file, options, problems);
}

} // namespace asperity
