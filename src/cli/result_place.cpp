// Where results may be written, looked at before a long run.
#include "result_place.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <unistd.h>

namespace asperity {

namespace fs = std::filesystem;

std::string fault_of_folder(const fs::path &folder) {
  std::error_code error;
  if (fs::exists(folder, error) && !fs::is_directory(folder, error))
    return fmt::format("{} is a file, and results need a folder: give --out another name.", folder.string());
  fs::create_directories(folder, error);
  if (error)
    return fmt::format("cannot make the folder {}: {}. Give --out a place you may write to.", folder.string(),
                       error.message());
  if (::access(folder.c_str(), W_OK | X_OK) != 0)
    return fmt::format("cannot write into {}: give --out a folder you may write to.", folder.string());
  return {};
}

std::string fault_of_file(const fs::path &file, std::string_view option) {
  std::error_code error;
  const fs::path parent = file.has_parent_path() ? file.parent_path() : fs::path(".");
  if (fs::is_directory(file, error))
    return fmt::format("{} is a folder: give {} a file name.", file.string(), option);
  if (!fs::is_directory(parent, error))
    return fmt::format("there is no folder {}: make it first, or give {} another name.", parent.string(),
                       option);
  const bool is_device = fs::exists(file, error) && !fs::is_regular_file(file, error);
  if (::access(is_device ? file.c_str() : parent.c_str(), W_OK) != 0)
    return fmt::format("cannot write {}: give {} a place you may write to.", file.string(), option);
  return {};
}

std::string plain_name(const std::string &name) {
  constexpr std::size_t kLongest = 100;
  std::string plain;
  for (char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    const bool is_kept = std::isalnum(byte) || byte >= 0x80u || c == '-' || c == '_';
    if (is_kept)
      plain += static_cast<char>(byte < 0x80u ? std::tolower(byte) : c);
    else if (!plain.empty() && plain.back() != '-')
      plain += '-';
  }
  plain.resize(std::min(plain.size(), kLongest));
  while (!plain.empty() && plain.back() == '-')
    plain.pop_back();
  return plain.empty() ? "feature" : plain;
}

} // namespace asperity
