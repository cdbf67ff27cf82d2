// `asperity study`: many combinations of a job predicted and kept; shown, merged, and the best one taken.
#pragma once

#include "exit_status.h"

#include <filesystem>
#include <string>
#include <vector>

namespace asperity {

/// What is asked of the results.
struct StudyAsk {
  std::string x, y;                           ///< ids of the axes; empty = chosen
  std::vector<std::string> at_most, at_least; ///< "ID=VALUE"
};

struct StudyOutputs {
  std::filesystem::path folder; ///< empty = none; else study.csv, study.json, front.png, influence.png in it
  std::filesystem::path csv, json; ///< empty = none
};

enum class StudyAction { run, show, best, merge };

struct StudyCommand {
  StudyAction action = StudyAction::run;
  std::filesystem::path job_file;           ///< run
  std::vector<std::string> vary;            ///< run
  std::filesystem::path results;            ///< run: empty = named after the job; show, best: to read
  std::string part;                         ///< run: "2/4", or empty
  bool roughness = false;                   ///< run
  int threads = 0;                          ///< run
  bool quiet = false;                       ///< run
  StudyAsk ask;                             ///< run, show, best
  StudyOutputs outputs;                     ///< run, show
  std::filesystem::path new_job;            ///< best: empty = none
  bool takes_nearest = false;               ///< best
  std::filesystem::path merged;             ///< merge
  std::vector<std::filesystem::path> parts; ///< merge
};

ExitStatus command_study(const StudyCommand &command);

} // namespace asperity
