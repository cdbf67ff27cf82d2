// Planned passes: the job's [[pass]] sections worked out into a route and its program text.
#pragma once

#include "asperity/job/job.h"
#include "asperity/passes/route.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

struct PassSummary {
  std::string name;
  int cutter = 0;
  std::size_t levels = 0;   ///< levels, rings or lines
  double cut_length_mm = 0; ///< of the feed moves
};

struct PassPlan {
  Route route;
  std::vector<PassSummary> passes;
  std::string text; ///< RS-274
};

/// Nothing if any pass cannot be planned; each problem stands at its pass in the job file.
std::optional<PassPlan> plan_passes(const Job &job, Problems &problems);

/// Height of rapids across the table: the job's own, or above blank, bosses, surfaces and keep-outs.
double safe_height_mm(const Job &job);

} // namespace asperity
