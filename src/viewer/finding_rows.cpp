// The findings and checks of one or two jobs in one list.
#include "finding_rows.h"

#include "asperity/compare/matched_finding.h"

namespace asperity {

std::vector<FindingRow> finding_rows(const Outcome *a, const Outcome *b) {
  static const Outcome none;
  std::vector<FindingRow> rows;
  for (const MatchedFinding &match : matched_findings(a != nullptr ? *a : none, b != nullptr ? *b : none))
    rows.push_back({{match.first, match.other}});
  return rows;
}

std::vector<WantedRow> wanted_rows(const Outcome *a, const Outcome *b) {
  std::vector<WantedRow> rows;
  for (std::size_t i = 0; a && i < a->checks.size(); ++i)
    rows.push_back({{&a->checks[i], nullptr}});
  for (std::size_t k = 0; b && k < b->checks.size(); ++k) {
    const WantedCheck &check = b->checks[k];
    bool is_new = true;
    for (WantedRow &row : rows)
      if (row.check[0] && !row.check[1] && row.check[0]->feature == check.feature &&
          row.check[0]->what == check.what) {
        row.check[1] = &check;
        is_new = false;
        break;
      }
    if (is_new)
      rows.push_back({{nullptr, &check}});
  }
  return rows;
}

} // namespace asperity
