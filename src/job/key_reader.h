// Reads typed keys out of one section of a job file, checks their range, and knows which keys were never
// asked for.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/base/vec.h"

#include <toml++/toml.h>

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// What all readers of one job file write into.
struct ReadLog {
  std::string file;
  Problems &problems;
  std::vector<std::string> &defaults_used;
};

/// Line and column, from 1; 0 = not known.
struct Place {
  int line = 0;
  int column = 0;
  std::string file = {}; ///< empty = the log's; another for what was included or changed
};

/// Numbers allowed for a key.
struct Range {
  double low = 0;
  double high = 0;
  bool low_is_open = false; ///< low itself is not allowed
};

/// required: a problem when missing. noted: the default is reported with its source. optional: silent.
enum class Need { required, noted, optional };

/// One row of a section's table of numeric keys.
template <class T> struct NumberKey {
  std::string_view name;
  double &(*place)(T &);
  Range range;
  Need need = Need::required;
  std::string_view default_source = {};
  bool (*belongs)(const T &) = nullptr; ///< nullptr = always
};

template <class T, double T::*Member> double &field(T &owner) { return owner.*Member; }
template <class T, Vec3 T::*Member, int kAxis> double &axis(T &owner) { return (owner.*Member)[kAxis]; }
template <class T, Vec2 T::*Member, int kAxis> double &plan_axis(T &owner) { return (owner.*Member)[kAxis]; }

/// A word the user may choose and what it stands for.
template <class E> struct Choice {
  std::string_view word;
  E value;
};

class KeyReader {
public:
  /// `section` names the section in messages; empty for the top of the file.
  KeyReader(const toml::table &table, std::string section, Place place, ReadLog &log);

  const std::string &section() const { return section_; }
  void rename(std::string section) { section_ = std::move(section); }
  ReadLog &log() const { return *log_; }
  const Place &place() const { return place_; }
  bool has(std::string_view key) const { return table_->contains(key); }
  /// Neither the key nor anything in its list.
  bool lacks(std::string_view key) const {
    const toml::node *node = table_->get(key);
    return !node || (node->is_array() && node->as_array()->empty());
  }

  // Each returns nothing when the key is missing or wrong; a problem has then been reported where one is due.
  std::optional<double> number(std::string_view key, Range range, Need need);
  std::optional<int> whole_number(std::string_view key, Range range, Need need);
  std::optional<bool> flag(std::string_view key);
  std::optional<std::string> text(std::string_view key, Need need);
  std::optional<Vec2> point2(std::string_view key, Need need);
  std::optional<Vec3> point3(std::string_view key, Need need);
  template <class E>
  std::optional<E> choice(std::string_view key, std::span<const Choice<E>> choices, Need need);
  /// A section of its own, [key] or key = { ... }.
  std::optional<KeyReader> table(std::string_view key, Need need);
  /// Repeated sections [[key]], named "key 1", "key 2", ...
  std::vector<KeyReader> tables(std::string_view key);
  /// Rows of equally many numbers, as [[1, 2], [3, 4]].
  std::vector<Vec2> points(std::string_view key, Need need);

  /// Reads all keys of the table into `owner`. `kind` is the choice that decides which belong: kind = "flat".
  template <class T> void numbers(T &owner, std::span<const NumberKey<T>> keys, std::string_view kind = {});
  /// Marks the key as known; a problem if it is given but does not belong to this `kind`. Returns `does`.
  bool belongs(std::string_view key, bool does, std::string_view kind);
  /// Marks keys as known without reading them, after a problem that leaves their meaning open.
  void know(std::string_view key) { asked_.push_back(key); }

  void note_default(std::string_view key, const std::string &value, std::string_view source);
  /// File the key's value comes from: the log's, or the one included.
  std::string file_of(std::string_view key) const;
  /// "the job file", or the name of the file or change that the value comes from.
  std::string source_of(std::string_view key) const;
  void error(std::string_view key, const std::string &message, const std::string &remedy);
  void warning(std::string_view key, const std::string &message, const std::string &remedy);
  /// Reports every key that was never asked for, with the nearest known one.
  void finish();

private:
  const toml::node *find(std::string_view key, Need need);
  std::string label(std::string_view key) const;
  Place place_of(std::string_view key) const;
  std::optional<double> checked(std::string_view key, const toml::node &node, Range range);
  std::vector<double> row(std::string_view key, const toml::node &node, std::size_t count);
  std::optional<std::size_t> chosen(std::string_view key, std::span<const std::string_view> words, Need need);

  const toml::table *table_;
  std::string section_;
  Place place_;
  ReadLog *log_;
  std::vector<std::string_view> asked_;
};

std::string text_of_number(double value);

template <class E>
std::optional<E> KeyReader::choice(std::string_view key, std::span<const Choice<E>> choices, Need need) {
  std::vector<std::string_view> words;
  for (const Choice<E> &each : choices)
    words.push_back(each.word);
  const auto index = chosen(key, words, need);
  return index ? std::optional<E>(choices[*index].value) : std::nullopt;
}

template <class T>
void KeyReader::numbers(T &owner, std::span<const NumberKey<T>> keys, std::string_view kind) {
  for (const NumberKey<T> &key : keys) {
    if (!belongs(key.name, key.belongs == nullptr || key.belongs(owner), kind))
      continue;
    if (const auto value = number(key.name, key.range, key.need))
      key.place(owner) = *value;
    else if (key.need == Need::noted && !has(key.name))
      note_default(key.name, text_of_number(key.place(owner)), key.default_source);
  }
}

} // namespace asperity
