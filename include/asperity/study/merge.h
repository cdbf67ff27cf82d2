// Parts of one study, predicted on several machines, put together.
#pragma once

#include "asperity/study/study_file.h"

#include <filesystem>
#include <span>
#include <string>

namespace asperity {

struct Merged {
  std::size_t combinations = 0; ///< in the new file
  std::size_t repeated = 0;     ///< found in more than one part, with the same result
  std::size_t missing = 0;      ///< of the study's combinations, in no part
};

/// Writes a new file whole or not at all. Refuses parts of different studies, and a combination whose results
/// differ between parts. Empty, or what is wrong and what to do.
std::string merge_parts(const std::filesystem::path &out, std::span<const std::filesystem::path> parts,
                        Merged &merged);

/// The same result to the last bit.
bool is_same_result(const Trial &a, const Trial &b);

} // namespace asperity
