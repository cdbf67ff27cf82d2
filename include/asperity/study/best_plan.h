// The best plan: the fastest combination that meets everything wanted.
#pragma once

#include "asperity/study/trial.h"

#include <optional>
#include <string_view>
#include <vector>

namespace asperity {

/// A limit beyond what the job wants: "rim/witness_depth_um" at most 3.
struct ExtraLimit {
  std::string id;
  double limit = 0;
  bool is_upper = true;
};

/// "ID=VALUE"; a problem and nothing if it is none, or no result is called so.
std::optional<ExtraLimit> read_limit(std::string_view text, bool is_upper, const StudyResults &results,
                                     Problems &problems);

struct BestPlan {
  /// Index of the fastest trial that meets everything wanted without a danger; of equally fast ones the one
  /// that uses up least of its tightest limit.
  std::optional<std::size_t> best;
  /// If there is none: the one without a danger (if any is) whose worst shortfall is smallest, then the
  /// fastest.
  std::optional<std::size_t> nearest;
  std::size_t well_count = 0; ///< trials that meet everything without a danger
  bool wants_anything = false;
};

/// What a trial lacks, the extra limits included.
std::vector<TrialCheck> missed_checks(const Trial &trial, const std::vector<ExtraLimit> &limits);

BestPlan best_plan(const StudyResults &results, const std::vector<ExtraLimit> &limits = {});

/// The job's text with that combination's values, and with the names of programs and meshes such that they
/// are found from the new file's folder.
std::optional<std::string> job_text_of(const StudyHead &head, std::size_t combination,
                                       const std::filesystem::path &new_file, Problems &problems);

} // namespace asperity
