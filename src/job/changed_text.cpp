// The job's text with values replaced where they stand, checked by reading it back.
#include "change_tree.h"

#include <fmt/format.h>

#include <charconv>
#include <sstream>

namespace asperity {

namespace {

/// Byte offset of a place (line and column from 1; columns count characters, not bytes).
std::size_t offset_of(std::string_view text, toml::source_position place) {
  std::size_t at = 0;
  for (toml::source_index line = 1; line < place.line && at < text.size(); ++line)
    at = std::min(text.find('\n', at), text.size() - 1) + 1;
  for (toml::source_index column = 1; column < place.column && at < text.size(); ++column) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80)
      ++at;
  }
  return at;
}

std::size_t after_line(std::string_view text, std::size_t at) {
  const std::size_t end = text.find('\n', at);
  return end == std::string_view::npos ? text.size() : end + 1;
}

/// How far the key leads in the text: the last section or value on the way, and how many steps led there.
struct Reached {
  const toml::node *node = nullptr;
  std::size_t steps = 0;
};

Reached follow(const toml::table &root, const std::vector<std::string> &steps) {
  Reached reached{&root, 0};
  for (const std::string &step : steps) {
    const toml::node *next = nullptr;
    if (const toml::table *table = reached.node->as_table())
      next = table->get(step);
    else if (const toml::array *list = reached.node->as_array())
      next = list->get(list_number(step) - 1);
    if (!next)
      break;
    reached = {next, reached.steps + 1};
  }
  return reached;
}

/// "key = value", deeper steps as inline sections.
std::string entry_text(std::span<const std::string> steps, const std::string &value) {
  return steps.size() == 1 ? fmt::format("{} = {}", steps[0], value)
                           : fmt::format("{} = {{ {} }}", steps[0], entry_text(steps.subspan(1), value));
}

std::string replaced_value(std::string text, const toml::node &node, const std::string &value) {
  const std::size_t begin = offset_of(text, node.source().begin);
  return text.replace(begin, offset_of(text, node.source().end) - begin, value);
}

/// Into the last plain keys at the top, or as a section of its own at the end.
std::string added_at_top(std::string text, const toml::table &root, std::span<const std::string> steps,
                         const std::string &value) {
  if (steps.size() > 1) {
    if (!text.empty() && text.back() != '\n')
      text += '\n';
    return text + fmt::format("\n[{}]\n{}\n", steps[0], entry_text(steps.subspan(1), value));
  }
  std::size_t at = 0;
  for (const auto &[key, node] : root)
    if (node.is_value())
      at = std::max(at, after_line(text, offset_of(text, node.source().end)));
  if (at > 0 && text[at - 1] != '\n')
    text.insert(at++, "\n");
  return text.insert(at, entry_text(steps, value) + '\n');
}

std::string added_in(std::string text, const toml::table &table, const std::string &entry) {
  const std::size_t begin = offset_of(text, table.source().begin);
  if (table.is_inline())
    return text.insert(begin + 1, fmt::format(" {}{}", entry, table.empty() ? " " : ","));
  std::size_t at = after_line(text, begin);
  if (text[at - 1] != '\n')
    text.insert(at++, "\n");
  return text.insert(at, entry + '\n');
}

/// The text edited where it stands. It may come out wrong on unusual texts: read it back.
std::string edited(const std::string &text, const toml::table &root, const ReadChange &change) {
  const Reached reached = follow(root, change.steps);
  const auto left = std::span(change.steps).subspan(reached.steps);
  if (left.empty())
    return replaced_value(text, *reached.node, change.text);
  if (reached.steps == 0)
    return added_at_top(text, root, left, change.text);
  return added_in(text, *reached.node->as_table(), entry_text(left, change.text));
}

bool reads_as(const std::string &text, const toml::table &wanted) {
  try {
    return toml::parse(text) == wanted;
  } catch (const toml::parse_error &) {
    return false;
  }
}

std::string written_anew(const toml::table &tree) {
  std::ostringstream out;
  out << tree << '\n';
  return out.str();
}

} // namespace

std::optional<std::string> changed_job_text(std::string_view text, const std::string &file,
                                            std::span<const JobChange> changes, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  std::string result(text);
  for (const JobChange &change : changes) {
    auto tree = parse_toml(result, file, problems);
    if (!tree)
      return std::nullopt;
    toml::table wanted = *tree;
    auto read = read_change(change, problems);
    if (!read || !put_change(wanted, change, problems))
      continue;
    const std::string in_place = edited(result, *tree, *read);
    result = reads_as(in_place, wanted) ? in_place : written_anew(wanted);
  }
  return problems.error_count() == errors_before ? std::optional(std::move(result)) : std::nullopt;
}

std::string toml_text(double value) {
  char digits[64];
  std::string text(digits, std::to_chars(digits, digits + sizeof digits, value).ptr);
  if (text.find_first_of(".en") == std::string::npos)
    text += ".0";
  return text;
}

std::string toml_text(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\')
      result += '\\';
    if (static_cast<unsigned char>(c) < 32 || c == 127)
      result += fmt::format("\\u{:04X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
    else
      result += c;
  }
  return result + '"';
}

} // namespace asperity
