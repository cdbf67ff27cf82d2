// Lists, ranges and words.
#include "value_list.h"

#include "asperity/study/grid.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace asperity {

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  if (begin == std::string_view::npos)
    return {};
  return std::string(text.substr(begin, text.find_last_not_of(" \t") - begin + 1));
}

namespace {

constexpr std::string_view kValueKey = "value";

std::optional<double> number_in(std::string_view text) {
  if (text.starts_with('+'))
    text.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool is_whole = error == std::errc() && end == text.data() + text.size() && !text.empty();
  return is_whole ? std::optional(value) : std::nullopt;
}

/// The parsed value, or an empty table.
toml::table toml_value(const std::string &text) {
  try {
    toml::table table = toml::parse(fmt::format("{} = {}", kValueKey, text));
    return table.size() == 1 ? table : toml::table{};
  } catch (const toml::parse_error &) {
    return {};
  }
}

/// Parts between commas outside brackets and quotes; nothing when one of those is not closed.
std::optional<std::vector<std::string>> split(std::string_view text) {
  std::vector<std::string> parts(1);
  int depth = 0;
  char quote = 0;
  for (const char c : text) {
    if (quote != 0) {
      quote = c == quote ? '\0' : quote;
    } else if (c == '"' || c == '\'') {
      quote = c;
    } else if (c == '[' || c == '{') {
      ++depth;
    } else if (c == ']' || c == '}') {
      --depth;
    } else if (c == ',' && depth == 0) {
      parts.emplace_back();
      continue;
    }
    parts.back() += c;
  }
  if (depth != 0 || quote != 0)
    return std::nullopt;
  for (std::string &part : parts)
    part = trimmed(part);
  return parts;
}

/// Digits behind the point.
int decimals_of(std::string_view text) {
  if (text.find_first_of("eE") != std::string_view::npos)
    return 17;
  const std::size_t point = text.find('.');
  return point == std::string_view::npos ? 0 : static_cast<int>(text.size() - point - 1);
}

/// With the decimals of the range's own numbers, so that 3 steps of 0.02 are 0.06 and no 0.06000...01.
std::string stepped_text(double value, int decimals) {
  if (decimals > 15)
    return toml_text(value);
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-')
    text.erase(0, 1);
  return text;
}

std::string add_range(const std::vector<std::string> &ends, std::vector<std::string> &values) {
  const double from = *number_in(ends[0]), to = *number_in(ends[1]), step = *number_in(ends[2]);
  const std::string range = fmt::format("{}:{}:{}", ends[0], ends[1], ends[2]);
  if (!std::isfinite(from) || !std::isfinite(to) || !std::isfinite(step))
    return fmt::format("{} has an end that is no finite number", range);
  if (step == 0.0 || (to - from) / step < 0.0)
    return fmt::format("{} never comes from {} to {}", range, ends[0], ends[1]);
  constexpr double kSlack = 1e-9; // of a step: rounding of decimal fractions
  const double steps = std::floor((to - from) / step + kSlack);
  if (steps >= static_cast<double>(kMostValues))
    return fmt::format("{} has more than {} values", range, kMostValues);
  const int decimals = std::max(decimals_of(ends[0]), decimals_of(ends[2]));
  for (double i = 0.0; i <= steps; i += 1.0)
    values.push_back(stepped_text(from + i * step, decimals));
  return {};
}

/// Three numbers with colons between, or nothing.
std::optional<std::vector<std::string>> range_ends(const std::string &part) {
  std::vector<std::string> ends(1);
  for (const char c : part) {
    if (c == ':')
      ends.emplace_back();
    else
      ends.back() += c;
  }
  const bool all_numbers = std::all_of(ends.begin(), ends.end(),
                                       [](const std::string &end) { return number_in(end).has_value(); });
  return ends.size() > 1 && all_numbers ? std::optional(std::move(ends)) : std::nullopt;
}

std::string add_value(const std::string &part, std::vector<std::string> &values) {
  if (part.empty())
    return "a value is missing between commas or at an end of the list";
  if (part.find_first_of("\n\r") != std::string::npos)
    return "a value has a line break in it";
  if (const auto ends = range_ends(part))
    return ends->size() == 3 ? add_range(*ends, values)
                             : fmt::format("{} has {} parts, and a range has three", part, ends->size());
  const toml::table read = toml_value(part);
  const std::optional<double> number = number_in(part);
  if (number && !std::isfinite(*number))
    return fmt::format("{} is no finite number", part);
  if (!read.empty() && part.front() != '#')
    values.push_back(part);
  else if (number)
    values.push_back(toml_text(*number)); // .5 and 5. are numbers to people
  else if (part.find_first_of("\"'[]{}=#\\") == std::string::npos)
    values.push_back(toml_text(std::string_view(part)));
  else
    return fmt::format("{} is not a value", part);
  return {};
}

bool are_same(const std::string &a, const std::string &b) {
  const std::optional<double> x = number_in(a), y = number_in(b);
  return x && y ? *x == *y : a == b;
}

} // namespace

std::optional<std::vector<std::string>> read_value_list(std::string_view text, std::string &fault) {
  const auto parts = split(text);
  if (!parts)
    fault = "a bracket or quote is not closed";
  std::vector<std::string> values;
  for (std::size_t i = 0; parts && i < parts->size() && fault.empty(); ++i)
    fault = values.size() < kMostValues ? add_value((*parts)[i], values)
                                        : fmt::format("the list has more than {} values", kMostValues);
  for (std::size_t i = 0; i < values.size() && fault.empty(); ++i)
    for (std::size_t k = 0; k < i && fault.empty(); ++k)
      if (are_same(values[i], values[k]))
        fault = fmt::format("{} stands in the list twice", shown_value(values[i]));
  return fault.empty() ? std::optional(std::move(values)) : std::nullopt;
}

std::string shown_value(std::string_view toml_text_of_value) {
  const toml::table read = toml_value(std::string(toml_text_of_value));
  const auto text = read[kValueKey].value<std::string>();
  return read[kValueKey].is_string() && text ? *text : std::string(toml_text_of_value);
}

} // namespace asperity
