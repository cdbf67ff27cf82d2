// Trials and influences as aligned columns.
#include "study_table.h"

#include "asperity/report/number_text.h"
#include "text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr std::size_t kMostRows = 60;

using Row = std::vector<std::string>;

struct FrontFlags {
  std::vector<bool> on_front;
  explicit FrontFlags(const StudyView &view) : on_front(view.results.trials.size(), false) {
    for (const FrontPoint &point : view.front.points)
      on_front[point.trial] = point.is_on_front;
  }
};

bool differs(const StudyView &view, const KeyNumber &column) {
  const KeyNumber *first = nullptr;
  for (const Trial &trial : view.results.trials)
    if (const KeyNumber *number = find_number(trial.numbers, column.id)) {
      if (first && first->value != number->value)
        return true;
      first = number;
    }
  return false;
}

/// The axes first, then what else differs and has a better side.
std::vector<std::string> number_ids(const StudyView &view) {
  std::vector<std::string> ids;
  const auto add = [&](const std::string &id) {
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end())
      ids.push_back(id);
  };
  add(view.front.x.id);
  add(view.front.y.id);
  for (const KeyNumber &column : view.columns)
    if (!column.feature.empty() && column.better != Better::neither && differs(view, column))
      add(column.id);
  return ids;
}

std::string verdict_text(const StudyView &view, const Trial &trial) {
  if (trial.status != TrialStatus::done)
    return trial.status == TrialStatus::wrong ? "wrong: " + printable(trial.why) : "no room in memory";
  const std::size_t missed = missed_checks(trial, view.limits).size();
  std::string text = missed > 0 ? fmt::format("{} missed", missed) : "all met";
  if (trial.dangers > 0)
    text += ", " + count_text(trial.dangers, "danger", "dangers");
  return text;
}

Row row_of(const StudyView &view, std::size_t i, const std::vector<std::string> &ids, bool is_on_front) {
  const Trial &trial = view.results.trials[i];
  Row row{fmt::format("{}", trial.combination + 1)};
  for (const JobChange &change : view.results.head.grid.changes(trial.combination))
    row.push_back(printable(shown_value(change.value)));
  for (const std::string &id : ids) {
    const KeyNumber *number = find_number(trial.numbers, id);
    row.push_back(number ? quantity_text(number->value, number->unit) : "-");
  }
  row.push_back(fmt::format("{}{}", is_on_front ? "*" : " ", view.best.best == i ? "+" : ""));
  std::string verdict = verdict_text(view, trial);
  constexpr std::size_t kLongest = 60;
  if (verdict.size() > kLongest)
    verdict = verdict.substr(0, kLongest) + "...";
  row.push_back(std::move(verdict));
  return row;
}

std::vector<Row> rows_with(const StudyView &view, const std::vector<std::string> &ids) {
  Row head{"no"};
  for (const std::string &key : short_keys(view.results.head.grid))
    head.push_back(key);
  head.insert(head.end(), ids.begin(), ids.end());
  head.insert(head.end(), {"", "wanted"});
  std::vector<Row> rows{head};
  const FrontFlags flags(view);
  const bool all = view.results.trials.size() <= kMostRows;
  for (std::size_t i = 0; i < view.results.trials.size() && rows.size() <= kMostRows; ++i)
    if (all || flags.on_front[i] || shown_plan(view.best) == i)
      rows.push_back(row_of(view, i, ids, flags.on_front[i]));
  return rows;
}

std::size_t widest_line(const std::string &text) {
  std::size_t widest = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    widest = std::max(widest, columns_of(std::string_view(text).substr(at, end - at)));
    at = end + 1;
  }
  return widest;
}

} // namespace

std::string trial_table(const StudyView &view, std::size_t width) {
  constexpr std::size_t kFewest = 2; // the axes always stay
  std::vector<std::string> ids = number_ids(view);
  std::string text = table(rows_with(view, ids), 2);
  while (ids.size() > kFewest && widest_line(text) > width) {
    ids.pop_back();
    text = table(rows_with(view, ids), 2);
  }
  if (view.results.trials.size() > kMostRows)
    text += fmt::format("  Shown are the front and the best of {} combinations; --csv FILE writes all.\n",
                        view.results.trials.size());
  return text;
}

std::string influence_table(const StudyView &view, std::size_t width) {
  constexpr std::size_t kMostMeans = 6;
  const StudyGrid &grid = view.results.head.grid;
  const std::string &unit = view.front.y.unit;
  std::vector<Row> rows{{"value", "range of means", "share", "mean at each value"}};
  for (std::size_t f = 0; f < view.influence.factors.size(); ++f) {
    const FactorInfluence &factor = view.influence.factors[f];
    std::string means;
    for (std::size_t v = 0; v < factor.level_mean.size() && v < kMostMeans; ++v)
      means += fmt::format("{}{}: {}", v == 0 ? "" : ", ", printable(shown_value(grid.factors[f].values[v])),
                           factor.level_count[v] == 0 ? "-" : quantity_text(factor.level_mean[v], unit));
    if (factor.level_mean.size() > kMostMeans)
      means += fmt::format(" and {} more", factor.level_mean.size() - kMostMeans);
    rows.push_back({grid.factors[f].key, quantity_text(factor.range, unit), share_text(factor.share), means});
  }
  rows.push_back({"together", "", share_text(view.influence.together_share), "(interaction)"});
  std::string text = table(rows, 2);
  if (widest_line(text) > width) // the means go into the picture and the JSON
    for (Row &row : rows)
      row.pop_back();
  return table(rows, 2);
}

} // namespace asperity
