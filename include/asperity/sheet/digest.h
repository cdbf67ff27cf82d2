// Fingerprints of input files, so that a sheet can be tied to what it was made from.
#pragma once

#include <filesystem>
#include <string>

namespace asperity {

struct InputFile {
  std::string name;
  std::string sha256; ///< hexadecimal; empty if the file could not be read
};
InputFile input_file(const std::filesystem::path &file);

} // namespace asperity
