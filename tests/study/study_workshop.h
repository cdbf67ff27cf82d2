// A workshop whose bush has a program for each of two feeds, and studies of it.
#pragma once

#include "cli/workshop.h"

#include <string>
#include <vector>

namespace asperity::test_support {

class StudyWorkshop : public Workshop {
protected:
  void SetUp() override;
  /// A small pin; without bending it is predicted in a fraction of the time.
  void write_job(bool bends) const;

  /// study bush.toml with 2 programs x 2 zero errors x 2 runouts = 8 combinations.
  static std::vector<std::string> study(const std::vector<std::string> &more = {});
  static constexpr std::size_t kCombinations = 8;

  /// Starts the program and kills it (SIGKILL) after so long; its status, or -9.
  int run_and_kill(const std::vector<std::string> &arguments, double after_s) const;
};

bool holds(const std::string &text, std::string_view part);

} // namespace asperity::test_support
