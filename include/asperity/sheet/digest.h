// Fingerprints of files, so that a sheet can be tied to what it was made from.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace asperity {

/// SHA-256 (FIPS 180-4) in small hexadecimal digits.
std::string sha256_hex(std::string_view bytes);
/// The same in base 64, as content security policies write it.
std::string sha256_base64(std::string_view bytes);
/// RFC 4648 base 64 with padding.
std::string base64(std::string_view bytes);

struct InputFile {
  std::string name;
  std::string sha256; ///< hexadecimal; empty if the file could not be read
};
InputFile input_file(const std::filesystem::path &file);

} // namespace asperity
