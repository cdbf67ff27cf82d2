// Values kept in files of their own, such as a measured material, taken into a job.
#pragma once

#include "asperity/base/problem.h"

#include <toml++/toml.h>

#include <filesystem>
#include <vector>

namespace asperity {

/// Takes in what include = "file.toml" or a list of such names, sought beside the job, holds: every value
/// that the job lacks. What the job itself says wins, with a warning where the two differ. [[cutter]]
/// sections meet by number. The key itself is removed. Returns the files.
std::vector<std::filesystem::path> take_in_included(toml::table &job, const std::filesystem::path &job_file,
                                                    Problems &problems);

} // namespace asperity
