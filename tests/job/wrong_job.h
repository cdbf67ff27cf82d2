// One mistake in a job file and what must be said about it.
#pragma once

#include <ostream>
#include <string_view>
#include <vector>

namespace asperity {

/// The small job with `find` replaced by `by` (empty find: `by` is added at the end). The first problem must
/// stand where `at` first occurs in the changed text, with `message` in its message and `remedy` in its
/// remedy.
struct WrongJob {
  std::string_view name;
  std::string_view find;
  std::string_view by;
  std::string_view at;
  std::string_view message;
  std::string_view remedy;
  std::size_t errors = 1; ///< one mistake, one problem, unless said otherwise
};

inline void PrintTo(const WrongJob &wrong, std::ostream *out) { *out << wrong.name; }

std::vector<WrongJob> wrong_values();
std::vector<WrongJob> wrong_keys();
std::vector<WrongJob> wrong_cutters();
std::vector<WrongJob> wrong_blanks();
std::vector<WrongJob> wrong_surfaces();
std::vector<WrongJob> wrong_holdings();

} // namespace asperity
