// One change made in a parsed job.
#pragma once

#include "asperity/job/job_change.h"

#include <toml++/toml.h>

#include <string>
#include <vector>

namespace asperity {

/// A job's text as TOML; a problem and nothing if it is none.
std::optional<toml::table> parse_toml(const std::string &text, const std::string &file, Problems &problems);

/// Name of the change in problems: 'change "key = value"'.
std::string name_of(const JobChange &change);

/// The change taken apart.
struct ReadChange {
  std::vector<std::string> steps; ///< of the key; not empty
  toml::table holder;             ///< the value, under kValueKey
  std::string text;               ///< the value's own text, without blanks and comments around it

  static constexpr std::string_view kValueKey = "value";
  toml::node &value() { return *holder.get(kValueKey); }
};
std::optional<ReadChange> read_change(const JobChange &change, Problems &problems);

/// Position from 1 that a step names, or 0 when it is no number.
std::size_t list_number(const std::string &step);

/// Puts the value into the tree, with the change as its place. False, with a problem, where it cannot stand.
bool put_change(toml::table &root, const JobChange &change, Problems &problems);

} // namespace asperity
