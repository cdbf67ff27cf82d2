// Several jobs read together and predicted one after the other, for everything that sets plans side by side.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/compare/comparison.h"
#include "exit_status.h"
#include "read_inputs.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

struct PlansRequest {
  std::vector<std::filesystem::path> jobs;
  int draws = 0;   ///< for the uncertainty of the differences; 0 = not asked for
  int threads = 0; ///< 0 = all cores
  bool quiet = false;
};

/// All problems of all files are shown at once; nothing is returned if there is any error.
std::optional<std::vector<Inputs>> read_plans(const std::vector<std::filesystem::path> &jobs);

struct PredictedPlans {
  std::vector<Outcome> outcomes;
  Comparison comparison;
  std::optional<ExitStatus> ended; ///< set when there is nothing to show; the reason has been said

  std::vector<const Outcome *> pointers() const;
};

/// With two plans or more and draws > 0 the differences get their uncertainty.
PredictedPlans predict_plans(const std::vector<Inputs> &inputs, const PlansRequest &request,
                             Progress &progress);

/// all_well if every plan is, else missed.
ExitStatus status_of(const std::vector<Outcome> &outcomes);

} // namespace asperity
