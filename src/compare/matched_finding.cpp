// Which finding of one plan is which of the other, and whether it became better.
#include "asperity/compare/matched_finding.h"

#include "asperity/compare/comparison.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace asperity {

namespace {

std::string_view feature_of(const Outcome &outcome, const Finding &finding) {
  const auto at = static_cast<std::size_t>(finding.feature);
  return finding.feature >= 0 && at < outcome.job.features.size()
             ? std::string_view(name_of(outcome.job.features[at]))
             : std::string_view();
}

bool is_matched_by_place(FindingKind kind) {
  return kind == FindingKind::witness_line || kind == FindingKind::keep_out_touched ||
         kind == FindingKind::rapid_in_stock;
}

struct Pair {
  double distance_mm = 0;
  int first = 0, other = 0;
  bool operator<(const Pair &than) const {
    return std::tie(distance_mm, first, other) < std::tie(than.distance_mm, than.first, than.other);
  }
};

/// All pairs that may match, nearest first.
std::vector<Pair> possible_pairs(const Outcome &first, const Outcome &other) {
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < first.findings.size(); ++i)
    for (std::size_t k = 0; k < other.findings.size(); ++k) {
      const Finding &a = first.findings[i], &b = other.findings[k];
      if (a.kind != b.kind || feature_of(first, a) != feature_of(other, b))
        continue;
      const double distance = glm::length(plan(a.place_mm) - plan(b.place_mm));
      if (!is_matched_by_place(a.kind) || distance <= kSamePlace_mm)
        pairs.push_back({distance, static_cast<int>(i), static_cast<int>(k)});
    }
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

Change change_between(const Finding &first, const Finding &other) {
  if (first.weight != other.weight)
    return other.weight < first.weight ? Change::better : Change::worse;
  if (first.size.empty() || other.size.empty())
    return Change::same;
  const double a = std::abs(first.size[0].value), b = std::abs(other.size[0].value);
  const double same = std::max(kSameShare * std::max(a, b), resolution(first.size[0].unit));
  if (!(std::abs(a - b) > same))
    return Change::same;
  const bool is_margin = first.size[0].name == "margin";
  return (b < a) != is_margin ? Change::better : Change::worse;
}

} // namespace

std::vector<MatchedFinding> matched_findings(const Outcome &first, const Outcome &other) {
  std::vector<int> partner(first.findings.size(), -1);
  std::vector<bool> is_taken(other.findings.size(), false);
  for (const Pair &pair : possible_pairs(first, other)) {
    const auto i = static_cast<std::size_t>(pair.first), k = static_cast<std::size_t>(pair.other);
    if (partner[i] >= 0 || is_taken[k])
      continue;
    partner[i] = pair.other;
    is_taken[k] = true;
  }
  std::vector<MatchedFinding> matched;
  for (std::size_t i = 0; i < partner.size(); ++i)
    matched.push_back(
        {static_cast<int>(i), partner[i],
         partner[i] < 0
             ? Change::gone
             : change_between(first.findings[i], other.findings[static_cast<std::size_t>(partner[i])])});
  for (std::size_t k = 0; k < is_taken.size(); ++k)
    if (!is_taken[k])
      matched.push_back({-1, static_cast<int>(k), Change::fresh});
  return matched;
}

std::string_view name_of(Change change) {
  switch (change) {
  case Change::gone:
    return "gone";
  case Change::fresh:
    return "new";
  case Change::better:
    return "better";
  case Change::worse:
    return "worse";
  case Change::same:
    break;
  }
  return "same";
}

} // namespace asperity
