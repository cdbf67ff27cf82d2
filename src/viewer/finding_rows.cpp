// The findings and checks of one or two jobs in one list.
#include "finding_rows.h"

namespace asperity {

namespace {

std::string_view feature_name(const Outcome &outcome, const Finding &finding) {
  const auto at = static_cast<std::size_t>(finding.feature);
  return finding.feature >= 0 && at < outcome.job.features.size() ? name_of(outcome.job.features[at])
                                                                  : std::string_view{};
}

bool is_same(const Outcome &a, const Finding &in_a, const Outcome &b, const Finding &in_b) {
  return in_a.kind == in_b.kind && feature_name(a, in_a) == feature_name(b, in_b) &&
         glm::length(in_a.place_mm - in_b.place_mm) < kSamePlace_mm;
}

} // namespace

std::vector<FindingRow> finding_rows(const Outcome *a, const Outcome *b) {
  std::vector<FindingRow> rows;
  std::vector<bool> taken(b ? b->findings.size() : 0, false);
  for (std::size_t i = 0; a && i < a->findings.size(); ++i) {
    FindingRow row;
    row.finding[0] = static_cast<int>(i);
    for (std::size_t k = 0; k < taken.size(); ++k)
      if (!taken[k] && is_same(*a, a->findings[i], *b, b->findings[k])) {
        row.finding[1] = static_cast<int>(k);
        taken[k] = true;
        break;
      }
    rows.push_back(row);
  }
  for (std::size_t k = 0; k < taken.size(); ++k)
    if (!taken[k])
      rows.push_back({{-1, static_cast<int>(k)}});
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
