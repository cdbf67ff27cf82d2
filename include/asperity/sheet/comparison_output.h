// A comparison as text for a terminal, as JSON and as a table for other programs.
#pragma once

#include "asperity/compare/comparison.h"
#include "asperity/report/summary_text.h"

#include <nlohmann/json.hpp>

#include <span>
#include <string>

namespace asperity {

/// What was compared: the outcomes in the order of the comparison's plans, and how often each was drawn.
struct ComparedOutcomes {
  const Comparison &comparison;
  std::span<const Outcome *const> outcomes;
  int draws = 0; ///< 0 = uncertainty not asked for
};

/// UTF-8, ends with a line break. Control characters in the user's own names are left out.
std::string comparison_text(const ComparedOutcomes &compared, const SummaryStyle &style = {});

inline constexpr int kComparisonVersion = 1; ///< raised when a key changes its meaning or goes away
nlohmann::json comparison_json(const ComparedOutcomes &compared);
std::string comparison_json_text(const ComparedOutcomes &compared);

/// Lines beginning with '#' say what is compared; then one row a number. Full precision, empty where it does
/// not apply.
std::string comparison_csv_text(const ComparedOutcomes &compared);

} // namespace asperity
