// Small job files made and read by the tests.
#pragma once

#include "asperity/job/job.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace asperity {

/// A folder of its own, removed at the end of the test.
class TestFolder {
public:
  TestFolder();
  ~TestFolder();
  TestFolder(const TestFolder &) = delete;
  TestFolder &operator=(const TestFolder &) = delete;
  std::filesystem::path write(const std::string &name, std::string_view bytes) const;
  const std::filesystem::path &path() const { return path_; }

private:
  std::filesystem::path path_;
};

/// A correct job with few keys; its program is "sheave.ngc".
extern const std::string_view kSmallJob;

/// Reads `text` as sheave.toml beside an empty sheave.ngc.
std::optional<Job> read_text(std::string_view text, Problems &problems);

/// text with the first `find` replaced; fails the test when `find` is not in it. An empty `find` appends.
std::string replaced(std::string_view text, std::string_view find, std::string_view by);

/// Line and column, from 1, of the first `word` in text.
struct TextPlace {
  int line = 0, column = 0;
};
TextPlace place_of(std::string_view text, std::string_view word);

} // namespace asperity
