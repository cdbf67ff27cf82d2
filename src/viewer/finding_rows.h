// The findings of one or two jobs in one list: the same flaw of both stands in one row.
#pragma once

#include "app_state.h"

namespace asperity {

struct FindingRow {
  std::array<int, 2> finding{-1, -1}; ///< [seat], index into Outcome::findings; -1 = not there
};

/// In the order of A's findings, then what only B has; which are the same is matched_findings' to say. Null:
/// no such job.
std::vector<FindingRow> finding_rows(const Outcome *a, const Outcome *b);

/// A wanted value of one or both jobs.
struct WantedRow {
  std::array<const WantedCheck *, 2> check{};
};
std::vector<WantedRow> wanted_rows(const Outcome *a, const Outcome *b);

} // namespace asperity
