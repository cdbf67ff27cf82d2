// A folder of its own for a test, and hand-made trials.
#pragma once

#include "asperity/study/trial.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace asperity::test_support {

class StudyFolder : public ::testing::Test {
protected:
  void SetUp() override;
  void TearDown() override;
  std::filesystem::path at(const std::string &name) const { return folder_ / name; }
  void write(const std::string &name, const std::string &text) const;
  std::string read(const std::string &name) const;

private:
  std::filesystem::path folder_;
};

/// Two factors with 2 and 3 values.
StudyGrid small_grid();
StudyHead small_head();
/// A trial with time and witness depth of a rim, at most 4 um wanted.
Trial trial_with(std::size_t combination, double time_s, double depth_um);

} // namespace asperity::test_support
