// A workshop whose bush has a program for each of two feeds, and studies of it.
#pragma once

#include "cli/workshop.h"

#include <string>
#include <vector>

namespace asperity::test_support {

class StudyWorkshop : public Workshop {
protected:
  void SetUp() override;

  /// study bush.toml with 2 programs x 3 zero errors x 2 runouts = 12 combinations, small and coarse.
  static std::vector<std::string> study(const std::vector<std::string> &more = {});
  static constexpr std::size_t kCombinations = 12;

  /// Starts the program and kills it (SIGKILL) after so long; its status, or -9.
  int run_and_kill(const std::vector<std::string> &arguments, double after_s) const;
};

bool holds(const std::string &text, std::string_view part);

} // namespace asperity::test_support
