// The text of a job with some of its values replaced: line by line, checked by reading it back.
#include "job_text.h"

#include <toml++/toml.h>

#include <charconv>
#include <sstream>

namespace asperity {

namespace {

using Lines = std::vector<std::string>;

Lines lines_of(std::string_view text) {
  Lines lines;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    lines.emplace_back(text.substr(from, end - from));
    from = end + 1;
  }
  return lines;
}

std::string text_of(const Lines &lines) {
  std::string text;
  for (const std::string &line : lines)
    text += line + '\n';
  return text;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(" \t\r");
  if (from == std::string_view::npos)
    return {};
  return text.substr(from, text.find_last_not_of(" \t\r") - from + 1);
}

/// "[name]" or "[[name]]" of a line, without a comment; else empty.
std::string_view header_of(std::string_view line) {
  line = trimmed(line.substr(0, line.find('#')));
  return !line.empty() && line.front() == '[' && line.back() == ']' ? line : std::string_view{};
}

/// Line of the table's header, or lines.size().
std::size_t header_line(const Lines &lines, const WhatIfKey &key) {
  const std::string wanted = key.index < 0 ? '[' + key.table + ']' : "[[" + key.table + "]]";
  int left = std::max(key.index, 0);
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (header_of(lines[i]) == wanted && left-- == 0)
      return i;
  return lines.size();
}

/// Puts the value in place of what stands between the equals sign and a comment.
bool replace_value(std::string &line, std::string_view key, const std::string &value) {
  const std::size_t equals = line.find('=');
  if (equals == std::string::npos || trimmed(std::string_view(line).substr(0, equals)) != key)
    return false;
  const std::size_t comment = line.find('#', equals);
  std::string tail;
  if (comment != std::string::npos) {
    const std::size_t last = line.find_last_not_of(" \t", comment - 1);
    tail = line.substr(last + 1);
  } else if (!line.empty() && line.back() == '\r') {
    tail = "\r";
  }
  line = line.substr(0, equals) + "= " + value + tail;
  return true;
}

void put(Lines &lines, const WhatIfKey &key, const std::string &value) {
  const std::size_t header = header_line(lines, key);
  if (header == lines.size()) {
    lines.insert(lines.end(), {"", '[' + key.table + ']', key.key + " = " + value});
    return;
  }
  for (std::size_t i = header + 1; i < lines.size() && header_of(lines[i]).empty(); ++i)
    if (replace_value(lines[i], key.key, value))
      return;
  lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(header) + 1, key.key + " = " + value);
}

std::string value_text(const WhatIfKey &key, double value) {
  return key.is_switch ? (value != 0.0 ? "true" : "false") : toml_number(value);
}

/// Sets the same value in what was read; false where the document has no place for it.
bool set(toml::table &root, const WhatIfKey &key, double value) {
  toml::table *table = nullptr;
  if (key.index < 0) {
    root.insert(key.table, toml::table{});
    table = root[key.table].as_table();
  } else if (toml::array *list = root[key.table].as_array()) {
    table = list->get(static_cast<std::size_t>(key.index))
                ? list->get(static_cast<std::size_t>(key.index))->as_table()
                : nullptr;
  }
  if (!table)
    return false;
  if (key.is_switch)
    table->insert_or_assign(key.key, value != 0.0);
  else
    table->insert_or_assign(key.key, value);
  return true;
}

bool reads_as(const std::string &text, const toml::table &wanted) {
  try {
    return toml::parse(text) == wanted;
  } catch (const toml::parse_error &) {
    return false;
  }
}

} // namespace

std::string toml_number(double value) {
  char digits[64];
  const auto end = std::to_chars(digits, digits + sizeof digits, value).ptr;
  std::string text(digits, end);
  if (text.find_first_of(".en") == std::string::npos)
    text += ".0";
  return text;
}

std::string with_changes(std::string_view text, const Job &job, const Changes &changes, std::string &fault) {
  fault.clear();
  try {
    toml::table wanted = toml::parse(text);
    Lines lines = lines_of(text);
    for (const WhatIfKey &key : what_if_keys(job)) {
      const auto change = changes.find(key.id);
      if (change == changes.end())
        continue;
      if (!set(wanted, key, change->second)) {
        fault = "The job's text has no place for " + key.id + '.';
        return {};
      }
      put(lines, key, value_text(key, change->second));
    }
    if (const std::string edited = text_of(lines); reads_as(edited, wanted))
      return edited;
    std::ostringstream anew;
    anew << wanted << '\n';
    return anew.str();
  } catch (const toml::parse_error &error) {
    fault = std::string("The job's text can no longer be read: ") + std::string(error.description());
    return {};
  }
}

} // namespace asperity
