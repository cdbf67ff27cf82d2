// What a sheet was made from.
#include "asperity/sheet/digest.h"

#include "asperity/base/digest.h"
#include "asperity/base/text_file.h"

namespace asperity {

namespace {
constexpr std::size_t kMostBytes = std::size_t(1) << 30;
}

InputFile input_file(const std::filesystem::path &file) {
  Problems problems;
  const auto bytes = read_file(file, kMostBytes, problems);
  return {file.filename().string(), bytes ? sha256_hex(*bytes) : std::string()};
}

} // namespace asperity
