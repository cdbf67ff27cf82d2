// What is wrong with a file the user gave: collected while reading goes on, shown all at once.
#pragma once

#include <string>
#include <vector>

namespace asperity {

enum class Severity { error, warning };

/// One thing wrong, where it is, and what to do about it. line and column count from 1; 0 = not known.
struct Problem {
  Severity severity = Severity::error;
  std::string file;
  int line = 0;
  int column = 0;
  std::string message;
  std::string remedy;
};

/// Every reader fills one of these. Reading stops being detailed after kMost problems.
class Problems {
public:
  static constexpr std::size_t kMost = 200;

  void add(Problem problem);
  void error(std::string file, int line, int column, std::string message, std::string remedy);
  void warning(std::string file, int line, int column, std::string message, std::string remedy);

  bool has_errors() const { return errors_ > 0; }
  std::size_t error_count() const { return errors_; }
  std::size_t left_out() const { return left_out_; }
  const std::vector<Problem> &all() const { return all_; }

private:
  std::vector<Problem> all_;
  std::size_t errors_ = 0;
  std::size_t left_out_ = 0;
};

/// "file:line:column: error: message" and, on the next line, "  remedy".
std::string text_of(const Problem &problem);

} // namespace asperity
