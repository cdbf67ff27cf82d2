// A small job in a folder of its own, and its prediction, for tests of the viewer.
#pragma once

#include "app_state.h"
#include "apply.h"

#include <gtest/gtest.h>

namespace asperity::test_support {

/// A bell-crank bush: a disc of 20 mm, its side cut in two levels entered by plunges. The disc is wanted 20
/// mm.
class Bench : public ::testing::Test {
protected:
  void SetUp() override;
  void TearDown() override;

  std::filesystem::path folder() const { return folder_; }
  std::filesystem::path job_file() const { return folder_ / "bush.toml"; }
  void write(const std::string &name, const std::string &text) const;
  std::string read(const std::string &name) const;

  static std::string job_text();
  static std::string program_text(double stepdown_feed_mm_per_min = 900);

private:
  std::filesystem::path folder_;
};

/// The bush, predicted; made once for all tests of the program.
std::shared_ptr<const RunResult> bush_result();
/// The same with the cutter 0.1 mm larger than nominal.
std::shared_ptr<const RunResult> bush_with_large_cutter();

/// A state with the bush at seat A, and the other at seat B if asked for.
AppState state_with_bush(bool with_other = false);

} // namespace asperity::test_support
