// Fingerprints of a study's inputs.
#include "asperity/study/identity.h"

#include "asperity/base/digest.h"
#include "asperity/base/text_file.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <toml++/toml.h>

#include <algorithm>
#include <set>
#include <sys/stat.h>

namespace asperity {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kMostJob_bytes = 4u << 20;
constexpr std::size_t kMostFile_bytes = std::size_t{1} << 30;
constexpr const char *kMissing = "missing";

/// Keys whose value is the name of a file beside the job.
bool names_a_file(std::string_view key) { return key == "program" || key == "mesh" || key == "include"; }

void gather(const toml::node &node, std::string_view key, std::set<std::string> &names) {
  if (const toml::table *table = node.as_table()) {
    for (const auto &[inner, value] : *table)
      gather(value, inner.str(), names);
  } else if (const toml::array *list = node.as_array()) {
    for (const toml::node &item : *list)
      gather(item, key, names);
  } else if (node.is_string() && names_a_file(key)) {
    names.insert(node.value<std::string>().value_or(""));
  }
}

std::string last_step(const std::string &key) { return key.substr(key.rfind('.') + 1); }

/// Every file that the job or a varied value names.
std::set<std::string> file_names(const std::string &job_text, const StudyGrid &grid) {
  std::set<std::string> names;
  try {
    gather(toml::parse(job_text), "", names);
    for (const Factor &factor : grid.factors)
      for (const std::string &value : factor.values) {
        const toml::table read = toml::parse("value = " + value);
        gather(*read.get("value"), last_step(factor.key), names);
      }
  } catch (const toml::parse_error &) {
    // A job that is no TOML is reported by the reader of jobs.
  }
  names.erase("");
  return names;
}

std::string sha256_of_file(const fs::path &path) {
  Problems ignored;
  const auto bytes = read_file(path, kMostFile_bytes, ignored);
  return bytes ? sha256_hex(*bytes) : kMissing;
}

std::string grid_text(const StudyGrid &grid) {
  std::string text;
  for (const Factor &factor : grid.factors)
    text += fmt::format("{} = [{}]\n", factor.key, fmt::join(factor.values, ", "));
  return text;
}

fs::path beside(const fs::path &job_file, const std::string &name) {
  return fs::path(name).is_absolute() ? fs::path(name) : job_file.parent_path() / name;
}

} // namespace

std::string StudyIdentity::sha256() const {
  std::string text =
      fmt::format("version {}\njob {}\nroughness {}\n{}", version, job_sha256, roughness, grid);
  for (const StudyFileHash &file : files)
    text += fmt::format("{} {}\n", file.sha256, file.name);
  return sha256_hex(text);
}

std::vector<std::string> differences(const StudyIdentity &a, const StudyIdentity &b) {
  std::vector<std::string> found;
  if (a.version != b.version)
    found.push_back(fmt::format("the program's version ({} and {})", a.version, b.version));
  if (a.job_sha256 != b.job_sha256)
    found.push_back("the job file");
  if (a.grid != b.grid)
    found.push_back("the varied values");
  if (a.roughness != b.roughness)
    found.push_back("whether roughness is read");
  std::set<std::string> names;
  for (const auto &[mine, theirs] : {std::pair{&a.files, &b.files}, std::pair{&b.files, &a.files}})
    for (const StudyFileHash &file : *mine)
      if (std::find(theirs->begin(), theirs->end(), file) == theirs->end())
        names.insert(file.name);
  found.insert(found.end(), names.begin(), names.end());
  return found;
}

std::optional<StudyHead> read_head(const fs::path &job_file, const StudyGrid &grid, bool roughness,
                                   const std::string &version, Problems &problems) {
  auto text = read_file(job_file, kMostJob_bytes, problems);
  if (!text)
    return std::nullopt;
  StudyHead head;
  head.grid = grid;
  std::error_code ignored;
  head.job_file = fs::absolute(job_file, ignored).lexically_normal();
  head.identity = {version, sha256_hex(*text), {}, grid_text(grid), roughness};
  for (const std::string &name : file_names(*text, grid))
    head.identity.files.push_back({name, sha256_of_file(beside(head.job_file, name))});
  head.job_text = std::move(*text);
  return head;
}

InputWatch::InputWatch(const StudyHead &head) : head_(head), seen_(stamps()) {}

std::string InputWatch::stamps() const {
  std::string text;
  const auto add = [&](const fs::path &path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0)
      text += fmt::format("{}:{}:{}.{:09};", status.st_ino, status.st_size, status.st_mtim.tv_sec,
                          status.st_mtim.tv_nsec);
    else
      text += "-;";
  };
  add(head_.job_file);
  for (const StudyFileHash &file : head_.identity.files)
    add(beside(head_.job_file, file.name));
  return text;
}

bool InputWatch::is_changed() {
  std::string now = stamps();
  if (now == seen_)
    return false;
  Problems ignored;
  const auto head =
      read_head(head_.job_file, head_.grid, head_.identity.roughness, head_.identity.version, ignored);
  if (!head || head->identity != head_.identity)
    return true;
  seen_ = std::move(now);
  return false;
}

} // namespace asperity
