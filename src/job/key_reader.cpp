// Typed reading of one section, with a problem for everything that is not as it should be.
#include "key_reader.h"

#include "nearest_word.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace asperity {

namespace {

/// Far more than any job needs; stops a runaway file from filling the memory.
constexpr std::size_t kMostItems = 20000;
constexpr std::size_t kLongestText = 200;

Place place_of_region(const toml::source_region &region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column),
          region.path ? *region.path : std::string()};
}

std::string_view kind_of(const toml::node &node) {
  switch (node.type()) {
  case toml::node_type::table:
    return "a section";
  case toml::node_type::array:
    return "a list";
  case toml::node_type::string:
    return "text";
  case toml::node_type::integer:
  case toml::node_type::floating_point:
    return "a number";
  case toml::node_type::boolean:
    return "true or false";
  default:
    return "a date or time";
  }
}

/// Whole numbers too, even those that a double only rounds to.
std::optional<double> number_in(const toml::node &node) {
  if (const auto *whole = node.as_integer())
    return static_cast<double>(whole->get());
  if (const auto *fraction = node.as_floating_point())
    return fraction->get();
  return std::nullopt;
}

std::string words_of(Range range) {
  return fmt::format("must be {} {} and at most {}", range.low_is_open ? "above" : "at least", range.low,
                     range.high);
}

/// Bytes that a terminal would act on: ASCII controls, and U+0080 to U+009F as UTF-8.
bool is_control(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
  return byte(i) < 32 || byte(i) == 127 || (byte(i) == 0xC2 && i + 1 < text.size() && byte(i + 1) < 0xA0);
}

bool has_control_characters(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (is_control(text, i))
      return true;
  return false;
}

/// A key as it may be shown: TOML allows anything between quotes.
std::string shown(std::string_view key) {
  std::string result(key.substr(0, kLongestText));
  for (std::size_t i = 0; i < result.size(); ++i)
    if (is_control(result, i))
      result[i] = '?';
  return result;
}

} // namespace

std::string text_of_number(double value) { return fmt::format("{:.10g}", value); }

KeyReader::KeyReader(const toml::table &table, std::string section, Place place, ReadLog &log)
    : table_(&table), section_(std::move(section)), place_(place), log_(&log) {}

std::string KeyReader::label(std::string_view key) const {
  return section_.empty() ? shown(key) : fmt::format("{}.{}", section_, shown(key));
}

Place KeyReader::place_of(std::string_view key) const {
  for (const auto &[name, node] : *table_)
    if (name.str() == key)
      return place_of_region(name.source());
  return place_;
}

std::string KeyReader::file_of(std::string_view key) const {
  const Place at = place_of(key);
  return at.file.empty() ? log_->file : at.file;
}

std::string KeyReader::source_of(std::string_view key) const {
  const std::string file = file_of(key);
  return file == log_->file ? "the job file" : std::filesystem::path(file).filename().string();
}

void KeyReader::error(std::string_view key, const std::string &message, const std::string &remedy) {
  const Place at = place_of(key);
  log_->problems.error(at.file.empty() ? log_->file : at.file, at.line, at.column,
                       fmt::format("{} {}", label(key), message), remedy);
}

void KeyReader::warning(std::string_view key, const std::string &message, const std::string &remedy) {
  const Place at = place_of(key);
  log_->problems.warning(at.file.empty() ? log_->file : at.file, at.line, at.column,
                         fmt::format("{} {}", label(key), message), remedy);
}

void KeyReader::note_default(std::string_view key, const std::string &value, std::string_view source) {
  log_->defaults_used.push_back(fmt::format("{} = {} ({})", label(key), value, source));
}

const toml::node *KeyReader::find(std::string_view key, Need need) {
  asked_.push_back(key);
  const toml::node *node = table_->get(key);
  if (!node && need == Need::required)
    log_->problems.error(
        place_.file.empty() ? log_->file : place_.file, place_.line, place_.column,
        label(key) + " is missing",
        fmt::format("Add '{}' to {}.", key, section_.empty() ? "the job file" : "this section"));
  return node;
}

bool KeyReader::belongs(std::string_view key, bool does, std::string_view kind) {
  if (does)
    return true;
  asked_.push_back(key);
  if (has(key))
    error(key, fmt::format("does not belong to {}", kind),
          fmt::format("Remove '{}' or change the kind.", key));
  return false;
}

std::optional<double> KeyReader::checked(std::string_view key, const toml::node &node, Range range) {
  const auto value = number_in(node);
  if (!value) {
    error(key, fmt::format("must be a number, not {}", kind_of(node)), "Write a plain number such as 12.5.");
    return std::nullopt;
  }
  if (!std::isfinite(*value)) {
    error(key, "must be a finite number", "Write a plain number such as 12.5.");
    return std::nullopt;
  }
  if (*value < range.low || *value > range.high || (range.low_is_open && *value == range.low)) {
    error(key, fmt::format("is {}: it {}", *value, words_of(range)),
          "Check the value; its unit is the one in the key's name.");
    return std::nullopt;
  }
  return value;
}

std::optional<double> KeyReader::number(std::string_view key, Range range, Need need) {
  const toml::node *node = find(key, need);
  return node ? checked(key, *node, range) : std::nullopt;
}

std::optional<int> KeyReader::whole_number(std::string_view key, Range range, Need need) {
  const toml::node *node = find(key, need);
  if (!node)
    return std::nullopt;
  if (!node->is_integer()) {
    error(key,
          fmt::format("must be a whole number, not {}", node->is_number() ? "a fraction" : kind_of(*node)),
          "Write a whole number such as 2.");
    return std::nullopt;
  }
  const auto value = checked(key, *node, range);
  return value ? std::optional<int>(static_cast<int>(*value)) : std::nullopt;
}

std::optional<bool> KeyReader::flag(std::string_view key) {
  const toml::node *node = find(key, Need::optional);
  if (!node)
    return std::nullopt;
  if (!node->is_boolean())
    error(key, fmt::format("must be true or false, not {}", kind_of(*node)),
          "Write true or false, without quotes.");
  return node->is_boolean() ? node->value<bool>() : std::nullopt;
}

std::optional<std::string> KeyReader::text(std::string_view key, Need need) {
  const toml::node *node = find(key, need);
  if (!node)
    return std::nullopt;
  if (!node->is_string()) {
    error(key, fmt::format("must be text, not {}", kind_of(*node)), "Put the text in double quotes.");
    return std::nullopt;
  }
  std::string value = *node->value<std::string>();
  if (value.empty() || value.size() > kLongestText || has_control_characters(value)) {
    error(key, fmt::format("must hold 1 to {} characters on one line", kLongestText),
          "Shorten the text, fill it in, or take out line breaks and control characters.");
    return std::nullopt;
  }
  return value;
}

std::vector<double> KeyReader::row(std::string_view key, const toml::node &node, std::size_t count) {
  const toml::array *items = node.as_array();
  if (!items || items->size() != count) {
    error(key, fmt::format("must be a list of {} numbers", count),
          count == 2 ? "Write it as [x, y]." : "Write it as [x, y, z].");
    return {};
  }
  std::vector<double> values;
  for (const toml::node &item : *items) {
    const auto value = checked(key, item, {-10000, 10000});
    if (!value)
      return {};
    values.push_back(*value);
  }
  return values;
}

std::optional<Vec2> KeyReader::point2(std::string_view key, Need need) {
  const toml::node *node = find(key, need);
  const auto values = node ? row(key, *node, 2) : std::vector<double>{};
  return values.empty() ? std::nullopt : std::optional<Vec2>({values[0], values[1]});
}

std::optional<Vec3> KeyReader::point3(std::string_view key, Need need) {
  const toml::node *node = find(key, need);
  const auto values = node ? row(key, *node, 3) : std::vector<double>{};
  return values.empty() ? std::nullopt : std::optional<Vec3>({values[0], values[1], values[2]});
}

std::vector<Vec2> KeyReader::points(std::string_view key, Need need) {
  const toml::node *node = find(key, need);
  if (!node)
    return {};
  const toml::array *rows = node->as_array();
  if (!rows || rows->empty() || rows->size() > kMostItems) {
    error(key, fmt::format("must be a list of 1 to {} points", kMostItems),
          "Write it as [[1.0, 2.0], [3.0, 4.0]].");
    return {};
  }
  std::vector<Vec2> result;
  for (const toml::node &item : *rows) {
    const auto values = row(key, item, 2);
    if (values.empty())
      return {};
    result.push_back({values[0], values[1]});
  }
  return result;
}

std::optional<std::size_t> KeyReader::chosen(std::string_view key, std::span<const std::string_view> words,
                                             Need need) {
  const auto word = text(key, need);
  if (!word)
    return std::nullopt;
  for (std::size_t i = 0; i < words.size(); ++i)
    if (words[i] == *word)
      return i;
  const std::string_view near = nearest_word(*word, words);
  error(key, fmt::format("cannot be \"{}\"", *word),
        near.empty() ? fmt::format("Choose one of: {}.", listed(words))
                     : fmt::format("Did you mean \"{}\"?", near));
  return std::nullopt;
}

std::optional<KeyReader> KeyReader::table(std::string_view key, Need need) {
  const toml::node *node = find(key, need);
  if (!node)
    return std::nullopt;
  if (const toml::table *inner = node->as_table())
    return KeyReader(*inner, label(key), place_of(key), *log_);
  error(key, fmt::format("must be one section, not {}", kind_of(*node)),
        node->is_array() ? fmt::format("Write [{}] once, with single brackets.", key)
                         : fmt::format("Write {} = {{ ... }} or a section [{}].", key, key));
  return std::nullopt;
}

std::vector<KeyReader> KeyReader::tables(std::string_view key) {
  std::vector<KeyReader> readers;
  const toml::node *node = find(key, Need::optional);
  if (!node)
    return readers;
  const toml::array *items = node->as_array();
  if (!items || items->size() > kMostItems || (!items->empty() && !items->is_homogeneous<toml::table>())) {
    error(key, fmt::format("must be a list of sections, at most {}", kMostItems),
          fmt::format("Begin each one with [[{}]], in double brackets.", key));
    return readers;
  }
  for (const toml::node &item : *items)
    readers.emplace_back(*item.as_table(), fmt::format("{} {}", label(key), readers.size() + 1),
                         place_of_region(item.source()), *log_);
  return readers;
}

void KeyReader::finish() {
  for (const auto &[name, node] : *table_) {
    if (std::find(asked_.begin(), asked_.end(), name.str()) != asked_.end())
      continue;
    const std::string_view near = nearest_word(name.str(), asked_);
    error(name.str(), "is not a known key",
          near.empty() ? fmt::format("Known here: {}.", listed(asked_))
                       : fmt::format("Did you mean '{}'?", near));
  }
}

} // namespace asperity
