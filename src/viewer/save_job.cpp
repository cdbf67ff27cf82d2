// Writing the values being tried as a new job.
#include "save_job.h"

#include "asperity/base/text_file.h"
#include "asperity/job/job_change.h"
#include "what_if.h"

#include <fmt/format.h>

#include <system_error>

namespace asperity {

namespace {

/// A plain name: what a job names (its program, its meshes) is found from its own folder.
bool is_plain(const std::filesystem::path &name) {
  return !name.empty() && name == name.filename() && name != "." && name != "..";
}

} // namespace

SaveEnded save_job(const Seat &seat, const SaveJob &wish) {
  if (!seat.result || !seat.result->job)
    return {false, false, "There is no job to save."};
  std::filesystem::path name = wish.name;
  if (!is_plain(name))
    return {false, false, "Give a file name without folders: the new job is written beside the old one."};
  if (name.extension() != ".toml")
    name += ".toml";
  const std::filesystem::path file = seat.file.parent_path() / name;
  std::error_code ignored;
  if (!wish.may_replace && std::filesystem::exists(file, ignored))
    return {false, true, fmt::format("{} is there already.", name.string())};
  Problems problems;
  const auto text =
      changed_job_text(seat.result->job_text, seat.file.string(), job_changes(seat.changes), problems);
  if (!text)
    return {false, false,
            problems.all().empty() ? "The job's text cannot be changed." : text_of(problems.all().front())};
  if (const std::string fault = write_file(file, *text); !fault.empty())
    return {false, false, fault};
  return {true, false, fmt::format("Saved {}.", file.string())};
}

} // namespace asperity
