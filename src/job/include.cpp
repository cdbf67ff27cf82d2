// Merges included files into a parsed job; every key keeps the file it comes from.
#include "include.h"

#include "change_tree.h"

#include "asperity/base/text_file.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr std::size_t kMostBytes = 1u << 20;
constexpr std::string_view kKey = "include";
constexpr std::string_view kSections[] = {"material", "machine", "cutter", "uncertainty"};

struct Merge {
  const std::string &job_file, &file;
  Problems &problems;

  void tables(toml::table &job, toml::table &included, const std::string &path);
  void cutters(toml::array &job, toml::array &included);
  void value(const toml::key &job_key, const toml::node &job, const toml::node &included,
             const std::string &path);
};

bool is_same(const toml::node &a, const toml::node &b) {
  const auto x = a.value<double>(), y = b.value<double>();
  if (x && y)
    return *x == *y;
  toml::table holds_a, holds_b;
  holds_a.insert("v", a);
  holds_b.insert("v", b);
  return holds_a == holds_b;
}

void Merge::value(const toml::key &job_key, const toml::node &job, const toml::node &included,
                  const std::string &path) {
  if (is_same(job, included))
    return;
  const auto &at = job_key.source().begin;
  const int line = static_cast<int>(at.line), column = static_cast<int>(at.column);
  if (path == "material.name")
    problems.error(job_file, line, column, fmt::format("{} differs from the one in {}", path, file),
                   "Include values of the material that is cut.");
  else
    problems.warning(
        job_file, line, column,
        fmt::format("{} stands here and, with another value, in {}; the job's is used", path, file),
        "Remove it here to use the included value.");
}

const toml::node *number_of(const toml::node &cutter) {
  const toml::table *table = cutter.as_table();
  return table ? table->get("number") : nullptr;
}

void Merge::cutters(toml::array &job, toml::array &included) {
  for (toml::node &theirs : included) {
    toml::table *match = nullptr;
    const toml::node *wanted = number_of(theirs);
    for (toml::node &ours : job)
      if (const toml::node *number = number_of(ours); number && wanted && is_same(*number, *wanted))
        match = ours.as_table();
    if (match)
      tables(*match, *theirs.as_table(), fmt::format("cutter {}", wanted->value<double>().value_or(0)));
    else
      job.push_back(std::move(theirs));
  }
}

void Merge::tables(toml::table &job, toml::table &included, const std::string &path) {
  for (auto &&[key, node] : included) {
    const std::string name = path.empty() ? std::string(key.str()) : fmt::format("{}.{}", path, key.str());
    const auto ours = job.find(key.str());
    if (ours == job.end())
      job.insert(key, std::move(node));
    else if (ours->second.is_table() && node.is_table())
      tables(*ours->second.as_table(), *node.as_table(), name);
    else if (name == "cutter" && ours->second.is_array_of_tables() && node.is_array_of_tables())
      cutters(*ours->second.as_array(), *node.as_array());
    else
      value(ours->first, ours->second, node, name);
  }
}

/// False, with problems, where the file holds what belongs into the job itself.
bool is_fit(const toml::table &included, const std::string &file, Problems &problems) {
  bool is_fit = true;
  for (const auto &[key, node] : included)
    if (std::find(std::begin(kSections), std::end(kSections), key.str()) == std::end(kSections)) {
      const auto &at = key.source().begin;
      problems.error(file, static_cast<int>(at.line), static_cast<int>(at.column),
                     fmt::format("{} cannot stand in an included file", key.str()),
                     "Only [material], [machine], [[cutter]] and [uncertainty] can.");
      is_fit = false;
    }
  return is_fit;
}

/// Names under the key; a problem and none where it is something else.
std::vector<std::string> names_in(const toml::node &node, const std::string &job_file, Problems &problems) {
  std::vector<std::string> names;
  const auto take = [&](const toml::node &each) {
    const auto name = each.value<std::string>();
    if (!each.is_string() || name->empty())
      return false;
    names.push_back(*name);
    return true;
  };
  bool is_well = node.is_string() ? take(node) : node.is_array();
  if (const toml::array *list = node.as_array())
    for (const toml::node &each : *list)
      is_well = is_well && take(each);
  if (!is_well) {
    const auto &at = node.source().begin;
    problems.error(job_file, static_cast<int>(at.line), static_cast<int>(at.column),
                   "include must be a file name or a list of them", "Write include = \"measured.toml\".");
    names.clear();
  }
  return names;
}

} // namespace

std::vector<std::filesystem::path> take_in_included(toml::table &job, const std::filesystem::path &job_file,
                                                    Problems &problems) {
  std::vector<std::filesystem::path> files;
  const toml::node *node = job.get(kKey);
  if (!node)
    return files;
  for (const std::string &name : names_in(*node, job_file.string(), problems)) {
    const std::filesystem::path path = job_file.parent_path() / name;
    const auto text = read_file(path, kMostBytes, problems);
    auto included = text ? parse_toml(*text, path.string(), problems) : std::nullopt;
    if (!included || !is_fit(*included, path.string(), problems))
      continue;
    const std::string ours = job_file.string(), theirs = path.string();
    Merge{ours, theirs, problems}.tables(job, *included, "");
    files.push_back(path);
  }
  job.erase(kKey);
  return files;
}

} // namespace asperity
