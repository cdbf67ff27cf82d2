// A folder with a small job in it, and the built program run on it as a user would.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <vector>

namespace asperity::test_support {

struct Ran {
  int status = -1; ///< exit status; minus the signal if one killed it
  std::string out, err;
};

/// A bell-crank bush: a disc of 20 mm, its side cut in two levels by a 6 mm cutter.
class Workshop : public ::testing::Test {
protected:
  void SetUp() override;
  void TearDown() override;

  std::filesystem::path folder() const { return folder_; }
  void write(const std::string &name, const std::string &text) const;
  std::string read(const std::string &name) const;
  std::vector<std::string> files() const; ///< in the folder and below, sorted

  /// Runs the program in the folder. interrupt_after_s > 0 sends it SIGINT then.
  Ran run(const std::vector<std::string> &arguments, double interrupt_after_s = 0.0) const;

  static std::string job(const std::string &wanted = "{ plus = 0.2, minus = 0.2 }",
                         const std::string &more = "");
  static std::string program();

private:
  std::filesystem::path folder_;
};

} // namespace asperity::test_support
