// Where results may be written, and what a feature's files are called.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace asperity {

/// Makes the folder if need be. Empty, or what is wrong and what to do.
std::string fault_of_folder(const std::filesystem::path &folder);

/// Looks whether the file can be written, without touching it; `option` names the option that asked for it.
std::string fault_of_file(const std::filesystem::path &file, std::string_view option);

/// The name in small letters without what file names cannot hold; never empty.
std::string plain_name(const std::string &name);

} // namespace asperity
