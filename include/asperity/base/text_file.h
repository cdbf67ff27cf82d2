// Whole files in and out: bounded reading with clear problems, writing that is never half done.
#pragma once

#include "asperity/base/problem.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace asperity {

/// The file's bytes, or a problem (missing, a directory, not readable, larger than `most_bytes`).
std::optional<std::string> read_file(const std::filesystem::path &path, std::size_t most_bytes,
                                     Problems &problems);

/// Writes to a temporary name in the same folder, then renames. Returns an empty string, or what went wrong.
/// The temporary is removed on failure; remove_unfinished_files() removes those a signal interrupted.
std::string write_file(const std::filesystem::path &path, std::string_view bytes);

/// Removes temporaries of writes in progress; async-signal-safe.
void remove_unfinished_files() noexcept;

} // namespace asperity
