// Problems found in the user's files, counted and put into words.
#include "asperity/base/problem.h"

#include <fmt/format.h>

#include <utility>

namespace asperity {

void Problems::add(Problem problem) {
  if (problem.severity == Severity::error)
    ++errors_;
  if (all_.size() < kMost)
    all_.push_back(std::move(problem));
  else
    ++left_out_;
}

void Problems::error(std::string file, int line, int column, std::string message, std::string remedy) {
  add({Severity::error, std::move(file), line, column, std::move(message), std::move(remedy)});
}

void Problems::warning(std::string file, int line, int column, std::string message, std::string remedy) {
  add({Severity::warning, std::move(file), line, column, std::move(message), std::move(remedy)});
}

std::string text_of(const Problem &problem) {
  std::string text = problem.file;
  if (problem.line > 0)
    text += fmt::format(":{}", problem.line);
  if (problem.line > 0 && problem.column > 0)
    text += fmt::format(":{}", problem.column);
  if (!text.empty())
    text += ": ";
  text += problem.severity == Severity::error ? "error: " : "warning: ";
  text += problem.message;
  if (!problem.remedy.empty())
    text += "\n  " + problem.remedy;
  return text;
}

} // namespace asperity
