// All combinations of the varied values.
#include "asperity/study/grid.h"

#include "value_list.h"

#include <fmt/format.h>

#include <charconv>

namespace asperity {

std::size_t StudyGrid::size() const {
  std::size_t count = factors.empty() ? 0 : 1;
  for (const Factor &factor : factors)
    count *= factor.values.size();
  return count;
}

std::size_t StudyGrid::level(std::size_t combination, std::size_t factor) const {
  for (std::size_t i = factors.size() - 1; i > factor; --i)
    combination /= factors[i].values.size();
  return combination % factors[factor].values.size();
}

std::vector<JobChange> StudyGrid::changes(std::size_t combination) const {
  std::vector<JobChange> changes;
  for (std::size_t i = 0; i < factors.size(); ++i)
    changes.push_back({factors[i].key, factors[i].values[level(combination, i)]});
  return changes;
}

namespace {

std::string name_of_option(std::string_view text) { return fmt::format("--vary {}", text); }

/// The key, as far as it can be judged without a job.
bool is_key(std::string_view key) {
  constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-.";
  return !key.empty() && key.find_first_not_of(kLetters) == std::string_view::npos && key.front() != '.' &&
         key.back() != '.' && key.find("..") == std::string_view::npos;
}

/// "setup" holds "setup.z_zero_error_mm".
bool holds(const std::string &outer, const std::string &inner) { return inner.starts_with(outer + '.'); }

bool is_new_key(const StudyGrid &grid, const Factor &factor, std::string_view text, Problems &problems) {
  for (const Factor &other : grid.factors) {
    if (other.key == factor.key) {
      problems.error(name_of_option(text), 0, 0, fmt::format("{} is varied twice", factor.key),
                     "Put all its values into one list.");
      return false;
    }
    if (holds(other.key, factor.key) || holds(factor.key, other.key)) {
      problems.error(name_of_option(text), 0, 0,
                     fmt::format("{} and {}: one is part of the other", other.key, factor.key),
                     "Vary the one or the other.");
      return false;
    }
  }
  return true;
}

} // namespace

std::optional<Factor> read_factor(std::string_view text, Problems &problems) {
  const std::size_t equals = text.find('=');
  const std::string key = trimmed(text.substr(0, equals));
  if (equals == std::string_view::npos || !is_key(key)) {
    problems.error(name_of_option(text), 0, 0,
                   equals == std::string_view::npos ? std::string("there is no = in it")
                                                    : fmt::format("\"{}\" is not a key of a job", key),
                   "Write a key of the job file, = and the values: setup.z_zero_error_mm=0,0.05,0.1.");
    return std::nullopt;
  }
  std::string fault;
  std::optional<std::vector<std::string>> values = read_value_list(text.substr(equals + 1), fault);
  if (!values) {
    problems.error(name_of_option(text), 0, 0, fault,
                   "Write values with commas between (0,0.05,0.1), or FROM:TO:STEP (0:0.1:0.02).");
    return std::nullopt;
  }
  return Factor{key, std::move(*values)};
}

std::optional<StudyGrid> read_grid(std::span<const std::string> texts, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  StudyGrid grid;
  std::size_t count = 1;
  for (const std::string &text : texts) {
    std::optional<Factor> factor = read_factor(text, problems);
    if (!factor || !is_new_key(grid, *factor, text, problems))
      continue;
    count = count > kMostCombinations ? count : count * factor->values.size();
    grid.factors.push_back(std::move(*factor));
  }
  if (texts.empty())
    problems.error("--vary", 0, 0, "nothing is varied",
                   "Give at least one --vary KEY=LIST, such as --vary setup.z_zero_error_mm=0,0.05,0.1.");
  else if (count > kMostCombinations)
    problems.error("--vary", 0, 0, fmt::format("there are more than {} combinations", kMostCombinations),
                   "Vary fewer keys at once, or give them fewer values.");
  return problems.error_count() == errors_before ? std::optional(std::move(grid)) : std::nullopt;
}

std::optional<StudyPart> read_part(std::string_view text, Problems &problems) {
  std::size_t number = 0, count = 0;
  const char *end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, number);
  const bool has_slash = first.ec == std::errc() && first.ptr != end && *first.ptr == '/';
  const auto second = has_slash ? std::from_chars(first.ptr + 1, end, count) : first;
  const bool is_good = has_slash && second.ec == std::errc() && second.ptr == end && number >= 1 &&
                       number <= count && count <= kMostCombinations;
  if (is_good)
    return StudyPart{number - 1, count};
  problems.error(fmt::format("--part {}", text), 0, 0, "this is no part of a study",
                 "Write I/N with I from 1 to N: 2/4 is the second of four parts.");
  return std::nullopt;
}

std::string combination_text(const StudyGrid &grid, std::size_t combination) {
  std::string text;
  for (const JobChange &change : grid.changes(combination))
    text += fmt::format("{}{} = {}", text.empty() ? "" : ", ", change.key, shown_value(change.value));
  return text;
}

} // namespace asperity
