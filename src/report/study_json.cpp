// A study as JSON.
#include "asperity/report/study_json.h"

#include "asperity/report/cautions.h"
#include "json_value.h"

#include <array>

namespace asperity {

namespace {

using nlohmann::json;

json factors_json(const StudyGrid &grid) {
  json list = json::array();
  for (const Factor &factor : grid.factors) {
    json values = json::array();
    for (const std::string &value : factor.values)
      values.push_back(shown_value(value));
    list.push_back({{"key", factor.key}, {"values", values}});
  }
  return list;
}

json meanings_json(const std::vector<KeyNumber> &columns) {
  constexpr std::array<const char *, 4> kBetter{"lower", "higher", "nearer_wanted", "neither"};
  json list = json::array();
  for (const KeyNumber &column : columns)
    list.push_back({{"id", column.id},
                    {"feature", column.feature.empty() ? json() : json(column.feature)},
                    {"what", column.what},
                    {"unit", column.unit},
                    {"better", kBetter[static_cast<std::size_t>(column.better)]}});
  return list;
}

json check_json(const TrialCheck &check) {
  return {{"feature", check.feature},
          {"what", check.what},
          {"wanted", check.wanted},
          {"predicted", number(check.predicted)},
          {"unit", check.unit},
          {"met", check.met},
          {"shortfall", number(check.shortfall)}};
}

json trial_json(const StudyGrid &grid, const Trial &trial, bool is_on_front) {
  json values = json::object(), numbers = json::object(), checks = json::array();
  for (const JobChange &change : grid.changes(trial.combination))
    values[change.key] = shown_value(change.value);
  for (const KeyNumber &n : trial.numbers)
    numbers[n.id] = number(n.value);
  for (const TrialCheck &check : trial.checks)
    checks.push_back(check_json(check));
  return {{"combination", trial.combination + 1},
          {"values", values},
          {"status", name_of(trial.status)},
          {"why", trial.why},
          {"all_met", trial.status == TrialStatus::done && trial.all_met()},
          {"dangers", trial.dangers},
          {"flaws", trial.flaws},
          {"on_front", is_on_front},
          {"checks", checks},
          {"numbers", numbers}};
}

json influence_json(const StudyView &view, const std::string &id) {
  const Influence influence = influence_on(view.results, id);
  json list = json::array();
  for (std::size_t f = 0; f < influence.factors.size(); ++f) {
    const FactorInfluence &factor = influence.factors[f];
    json means = json::array();
    for (const double mean : factor.level_mean)
      means.push_back(number(mean));
    list.push_back({{"key", view.results.head.grid.factors[f].key},
                    {"range", number(factor.range)},
                    {"share", number(factor.share)},
                    {"mean_at_value", means},
                    {"trials_at_value", factor.level_count}});
  }
  return {{"number", id},
          {"mean", number(influence.mean)},
          {"trials", influence.count},
          {"sum_of_squares", number(influence.sum_of_squares)},
          {"balanced", influence.is_balanced},
          {"values", list},
          {"together_share", number(influence.together_share)}};
}

json best_json(const StudyView &view) {
  const auto shown = shown_plan(view.best);
  json missed = json::array();
  if (shown)
    for (const TrialCheck &check : missed_checks(view.results.trials[*shown], view.limits))
      missed.push_back(check_json(check));
  return {{"combination", shown ? json(view.results.trials[*shown].combination + 1) : json()},
          {"meets_everything", view.best.best.has_value()},
          {"missed", missed},
          {"combinations_that_do", view.best.well_count}};
}

} // namespace

std::string study_json_text(const StudyView &view) {
  std::vector<bool> on_front(view.results.trials.size(), false);
  for (const FrontPoint &point : view.front.points)
    on_front[point.trial] = point.is_on_front;
  json trials = json::array(), influences = json::array();
  for (std::size_t i = 0; i < view.results.trials.size(); ++i)
    trials.push_back(trial_json(view.results.head.grid, view.results.trials[i], on_front[i]));
  for (const KeyNumber &column : view.columns)
    influences.push_back(influence_json(view, column.id));
  const json all{{"format", "asperity-study"},
                 {"version", 1},
                 {"study", view.results.head.identity.sha256()},
                 {"program_version", view.results.head.identity.version},
                 {"job_file", view.results.head.job_file.filename().string()},
                 {"varied", factors_json(view.results.head.grid)},
                 {"combinations", view.all()},
                 {"numbers", meanings_json(view.columns)},
                 {"trials", trials},
                 {"front", {{"x", view.front.x.id}, {"y", view.front.y.id}}},
                 {"influence", influences},
                 {"best", best_json(view)},
                 {"notes", {"Predicted by a model, not measured."}},
                 {"cautions", cautions()}};
  return all.dump(2, ' ', false, json::error_handler_t::replace) + '\n';
}

} // namespace asperity
