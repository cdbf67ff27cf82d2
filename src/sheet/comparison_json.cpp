// A comparison for other programs.
#include "asperity/sheet/comparison_output.h"

#include "asperity/compare/difference_chart.h"
#include "asperity/compare/matched_finding.h"
#include "asperity/report/cautions.h"
#include "asperity/sheet/answer.h"

#include <cmath>

namespace asperity {

namespace {

using nlohmann::json;

json finite(double value) { return std::isfinite(value) ? json(value) : json(); }

json plans_json(const ComparedOutcomes &c) {
  json out = json::array();
  for (std::size_t k = 0; k < c.outcomes.size(); ++k) {
    const ComparedPlan &plan = c.comparison.plans[k];
    out.push_back({{"letter", plan.letter},
                   {"title", plan.title},
                   {"file", c.outcomes[k]->job.file.string()},
                   {"program_file", c.outcomes[k]->program.file.string()},
                   {"checks", plan.checks},
                   {"checks_missed", plan.missed},
                   {"dangers", plan.dangers},
                   {"all_well", plan.is_fit()}});
  }
  return out;
}

json difference_json(const std::optional<Difference> &difference) {
  if (!difference)
    return nullptr;
  const std::string_view word = standing_text(difference->standing);
  json out = {{"value", finite(difference->value)},
              {"standing", word.empty() ? json() : json(word)},
              {"low", nullptr},
              {"high", nullptr},
              {"larger_than_uncertainty", nullptr}};
  if (difference->spread) {
    out["low"] = finite(difference->spread->low);
    out["high"] = finite(difference->spread->high);
    out["larger_than_uncertainty"] = !difference->spread->holds_nought();
  }
  return out;
}

std::string_view better_text(Better better) {
  switch (better) {
  case Better::lower:
    return "lower";
  case Better::higher:
    return "higher";
  case Better::nearer_wanted:
    return "nearer_wanted";
  case Better::neither:
    break;
  }
  return "neither";
}

json numbers_json(const Comparison &comparison) {
  json out = json::array();
  for (const ComparedNumber &row : comparison.numbers) {
    json values = json::array(), differences = json::array();
    for (std::size_t k = 0; k < row.of.size(); ++k) {
      values.push_back(row.of[k] ? finite(row.of[k]->value) : json());
      differences.push_back(difference_json(row.difference[k]));
    }
    out.push_back(
        {{"id", row.number.id},
         {"feature", row.number.feature.empty() ? json() : json(row.number.feature)},
         {"what", row.number.what},
         {"unit", row.number.unit},
         {"better", better_text(row.number.better)},
         {"wanted", row.number.better == Better::nearer_wanted ? finite(row.number.wanted) : json()},
         {"values", std::move(values)},
         {"differences", std::move(differences)}});
  }
  return out;
}

json index_json(int index) { return index < 0 ? json() : json(index); }

json against_first(const ComparedOutcomes &c, std::size_t k) {
  json findings = json::array(), surfaces = json::array();
  for (const MatchedFinding &match : matched_findings(*c.outcomes[0], *c.outcomes[k]))
    findings.push_back({{"change", name_of(match.change)},
                        {"finding_of_first", index_json(match.first)},
                        {"finding_of_other", index_json(match.other)}});
  const FeaturePairs pairs = feature_pairs(c.outcomes[0]->job, c.outcomes[k]->job);
  for (const FeaturePair &pair : pairs.pairs) {
    const DifferenceChart d =
        difference_chart(c.outcomes[0]->charts[pair.first], c.outcomes[k]->charts[pair.other]);
    surfaces.push_back({{"feature", name_of(c.outcomes[0]->job.features[pair.first])},
                        {"resampled", d.is_resampled},
                        {"mean_um", finite(d.mean_um)},
                        {"lowest_um", finite(d.lowest_um)},
                        {"highest_um", finite(d.highest_um)},
                        {"root_mean_square_um", finite(d.rms_um)},
                        {"cut_in_both_share", d.both_share},
                        {"cut_in_first_only_share", d.first_only_share},
                        {"cut_in_other_only_share", d.other_only_share}});
  }
  return {{"plan", c.comparison.plans[k].letter},
          {"findings", std::move(findings)},
          {"surfaces", std::move(surfaces)},
          {"surfaces_left_out", pairs.left_out}};
}

} // namespace

json comparison_json(const ComparedOutcomes &c) {
  const Answer answer = answer_of(c.comparison, c.outcomes);
  json against = json::array();
  for (std::size_t k = 1; k < c.outcomes.size(); ++k)
    against.push_back(against_first(c, k));
  json said = json::array();
  for (const std::string_view caution : cautions())
    said.push_back(caution);
  return {{"format", "asperity-comparison"},
          {"version", kComparisonVersion},
          {"plans", plans_json(c)},
          {"answer",
           {{"plan", answer.choice.plan ? json(c.comparison.plans[*answer.choice.plan].letter) : json()},
            {"headline", answer.headline},
            {"reasons", answer.reasons},
            {"best_at", best_at_sentence(c.comparison)}}},
          {"draws", c.draws},
          {"numbers", numbers_json(c.comparison)},
          {"against_first", std::move(against)},
          {"uncertainty", uncertainty_sentence(c.comparison)},
          {"cautions", std::move(said)}};
}

std::string comparison_json_text(const ComparedOutcomes &c) {
  return comparison_json(c).dump(2, ' ', false, json::error_handler_t::replace) + '\n';
}

} // namespace asperity
