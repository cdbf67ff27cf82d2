// Follows a dotted key down a parsed job and puts a value at its end.
#include "change_tree.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace asperity {

namespace {

constexpr std::size_t kMostSteps = 16;
constexpr std::size_t kMostItems = 100000;

bool is_bare(std::string_view step) {
  constexpr std::string_view kLetters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-";
  return !step.empty() && step.find_first_not_of(kLetters) == std::string_view::npos;
}

/// Empty when a part of the key is none.
std::vector<std::string> steps_of(std::string_view key) {
  std::vector<std::string> steps;
  while (true) {
    const std::size_t dot = key.find('.');
    steps.emplace_back(key.substr(0, dot));
    if (!is_bare(steps.back()) || steps.size() > kMostSteps)
      return {};
    if (dot == std::string_view::npos)
      return steps;
    key.remove_prefix(dot + 1);
  }
}

void refuse(const JobChange &change, Problems &problems, const std::string &message,
            const std::string &remedy) {
  problems.error(name_of(change), 0, 0, message, remedy);
}

std::string joined(const std::vector<std::string> &steps, std::size_t count) {
  return fmt::format("{}", fmt::join(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(count), "."));
}

/// Takes the node under `key` out and puts it back under a key whose place is the change.
void rename_place(toml::table &table, const std::string &key, const toml::source_region &place) {
  toml::node *node = table.get(key);
  toml::table held;
  held.insert("node", std::move(*node));
  table.erase(key);
  table.insert(toml::key(key, place), std::move(*held.get("node")));
}

/// Where a walk down the tree has come to.
struct Walk {
  toml::table &root;
  const JobChange &change;
  ReadChange &read;
  toml::source_region place;
  Problems &problems;

  bool into_table(toml::table &table, std::size_t step);
  bool into_list(toml::table &owner, const std::string &key, std::size_t step);
};

bool Walk::into_list(toml::table &owner, const std::string &key, std::size_t step) {
  toml::array &list = *owner.get(key)->as_array();
  const std::size_t number = list_number(read.steps[step]);
  const std::string name = joined(read.steps, step);
  if (number == 0 || number > list.size()) {
    refuse(change, problems,
           number == 0 ? fmt::format("{} is a list, and \"{}\" is no number", name, read.steps[step])
                       : fmt::format("{} has {} items; there is no number {}", name, list.size(), number),
           fmt::format("Say which item, from 1 on: {}.1 and so on.", name));
    return false;
  }
  toml::node &item = *list.get(number - 1);
  if (step + 1 == read.steps.size()) {
    list.replace(list.cbegin() + static_cast<std::ptrdiff_t>(number - 1), std::move(read.value()));
    rename_place(owner, key, place);
    return true;
  }
  if (toml::table *inner = item.as_table())
    return into_table(*inner, step + 1);
  refuse(change, problems, fmt::format("{} is no section", joined(read.steps, step + 1)),
         "Shorten the key to a value.");
  return false;
}

bool Walk::into_table(toml::table &table, std::size_t step) {
  const std::string &key = read.steps[step];
  if (step + 1 == read.steps.size()) {
    table.erase(key);
    table.insert(toml::key(key, place), std::move(read.value()));
    return true;
  }
  if (!table.contains(key)) {
    if (list_number(read.steps[step + 1]) > 0) {
      refuse(change, problems, fmt::format("the job has no {}", joined(read.steps, step + 1)),
             "Change what the job file has, or add the item to the file.");
      return false;
    }
    table.insert(toml::key(key, place), toml::table{});
  }
  toml::node &next = *table.get(key);
  if (toml::table *inner = next.as_table())
    return into_table(*inner, step + 1);
  if (next.is_array())
    return into_list(table, key, step + 1);
  refuse(change, problems, fmt::format("{} is a value, not a section", joined(read.steps, step + 1)),
         "Shorten the key to the value.");
  return false;
}

} // namespace

std::optional<toml::table> parse_toml(const std::string &text, const std::string &file, Problems &problems) {
  try {
    return toml::parse(text, std::string_view(file));
  } catch (const toml::parse_error &fault) {
    const auto &begin = fault.source().begin;
    problems.error(
        file, static_cast<int>(begin.line), static_cast<int>(begin.column),
        fmt::format("cannot be read as TOML: {}", fault.description()),
        "Correct the line: key = value, text in double quotes, sections in [brackets], each key once.");
    return std::nullopt;
  }
}

std::size_t list_number(const std::string &step) {
  std::size_t number = 0;
  const auto [end, fault] = std::from_chars(step.data(), step.data() + step.size(), number);
  return fault == std::errc{} && end == step.data() + step.size() && number <= kMostItems ? number : 0;
}

std::string name_of(const JobChange &change) {
  constexpr std::size_t kLongest = 120;
  std::string text = fmt::format("{} = {}", change.key, change.value).substr(0, kLongest);
  std::replace_if(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 32; }, '?');
  return fmt::format("change \"{}\"", text);
}

std::optional<ReadChange> read_change(const JobChange &change, Problems &problems) {
  ReadChange read{steps_of(change.key), {}, {}};
  if (read.steps.empty()) {
    refuse(change, problems, fmt::format("\"{}\" is not a key of a job", change.key),
           "Write the sections and the key with dots between: machine.tram_deg or cutter.1.runout_mm.");
    return std::nullopt;
  }
  const std::string begin = fmt::format("{} = ", ReadChange::kValueKey);
  try {
    if (change.value.find_first_of("\n\r") == std::string::npos)
      read.holder = toml::parse(begin + change.value, std::string_view(name_of(change)));
  } catch (const toml::parse_error &) {
    read.holder.clear();
  }
  if (read.holder.size() != 1 || !read.holder.contains(ReadChange::kValueKey)) {
    refuse(change, problems, fmt::format("\"{}\" is not a value", change.value),
           "Write a number, true or false, a [list], or text in double quotes.");
    return std::nullopt;
  }
  const std::size_t from = change.value.find_first_not_of(" \t");
  const std::size_t comment = read.value().is_string() || read.value().is_table() || read.value().is_array()
                                  ? std::string::npos
                                  : change.value.find('#');
  read.text = change.value.substr(from, comment == std::string::npos ? comment : comment - from);
  read.text.erase(read.text.find_last_not_of(" \t") + 1);
  return read;
}

bool put_change(toml::table &root, const JobChange &change, Problems &problems) {
  auto read = read_change(change, problems);
  if (!read)
    return false;
  const toml::source_region place{{}, {}, std::make_shared<const std::string>(name_of(change))};
  return Walk{root, change, *read, place, problems}.into_table(root, 0);
}

} // namespace asperity
