// Key numbers of all plans in one table.
#include "asperity/compare/comparison.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

ComparedPlan plan_of(const Outcome &outcome, std::size_t i) {
  ComparedPlan plan{.letter = plan_letter(i), .title = outcome.job.title, .time_s = outcome.path.duration_s};
  plan.checks = outcome.checks.size();
  for (const WantedCheck &check : outcome.checks)
    plan.missed += check.met ? 0 : 1;
  for (const Finding &finding : outcome.findings)
    plan.dangers += finding.weight == Weight::danger ? 1 : 0;
  return plan;
}

/// Puts the numbers of one plan into the table; one without a row gets it behind the number before it.
void add_column(std::vector<ComparedNumber> &rows, const std::vector<KeyNumber> &numbers, std::size_t plan,
                std::size_t plans) {
  std::size_t behind = 0;
  for (const KeyNumber &number : numbers) {
    auto row = std::find_if(rows.begin(), rows.end(),
                            [&](const ComparedNumber &r) { return r.number.id == number.id; });
    if (row == rows.end())
      row = rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(behind),
                        {number, std::vector<std::optional<KeyNumber>>(plans),
                         std::vector<std::optional<Difference>>(plans)});
    row->of[plan] = number;
    behind = static_cast<std::size_t>(row - rows.begin()) + 1;
  }
}

Standing standing_of(const KeyNumber &first, const KeyNumber &other,
                     const std::optional<DifferenceBand> &spread) {
  if (first.better == Better::neither)
    return Standing::informs;
  const double gain = merit(other) - merit(first);
  if (std::abs(gain) <= resolution(first.unit) || (spread && spread->holds_nought()))
    return Standing::same;
  return gain > 0.0 ? Standing::better : Standing::worse;
}

void judge(ComparedNumber &row, std::size_t plan, const std::optional<DifferenceBand> &spread) {
  if (plan == 0 || !row.of[0] || !row.of[plan])
    return;
  row.difference[plan] = Difference{row.of[plan]->value - row.of[0]->value,
                                    standing_of(*row.of[0], *row.of[plan], spread), spread};
}

} // namespace

double resolution(std::string_view unit) {
  if (unit == "mm")
    return 0.001;
  if (unit == "um" || unit == "degC" || unit == "N" || unit == "W" || unit == "%")
    return 0.1;
  if (unit == "s")
    return 0.5;
  return 0.005;
}

std::string plan_letter(std::size_t plan) {
  const std::string letter(1, static_cast<char>('A' + plan % 26));
  return plan < 26 ? letter : fmt::format("{}{}", letter, plan / 26 + 1);
}

Comparison compare(std::span<const Outcome *const> outcomes) {
  Comparison comparison;
  for (std::size_t i = 0; i < outcomes.size(); ++i) {
    comparison.plans.push_back(plan_of(*outcomes[i], i));
    add_column(comparison.numbers, key_numbers(*outcomes[i]), i, outcomes.size());
  }
  for (ComparedNumber &row : comparison.numbers)
    for (std::size_t i = 1; i < outcomes.size(); ++i)
      judge(row, i, std::nullopt);
  return comparison;
}

void apply_bands(Comparison &comparison, std::size_t plan, std::span<const NumberBand> spreads) {
  comparison.knows_uncertainty = true;
  for (const NumberBand &known : spreads)
    for (ComparedNumber &row : comparison.numbers)
      if (row.number.id == known.id)
        judge(row, plan, known.spread);
}

} // namespace asperity
