// Which combination to take, and its job file.
#include "asperity/study/best_plan.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <tuple>

namespace asperity {

namespace fs = std::filesystem;

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

TrialCheck check_of(const Trial &trial, const ExtraLimit &limit) {
  const KeyNumber *number = find_number(trial.numbers, limit.id);
  TrialCheck check;
  check.what = limit.id;
  check.wanted = fmt::format("at {} {:g}", limit.is_upper ? "most" : "least", limit.limit);
  check.predicted = number ? number->value : std::numeric_limits<double>::quiet_NaN();
  check.limit = limit.limit;
  check.unit = number ? number->unit : "";
  const double beyond = limit.is_upper ? check.predicted - limit.limit : limit.limit - check.predicted;
  check.met = beyond <= 0.0;
  check.shortfall =
      !number ? kInfinite : std::max(0.0, beyond) / (limit.limit != 0.0 ? std::abs(limit.limit) : 1.0);
  return check;
}

double time_of(const Trial &trial) {
  const KeyNumber *time = find_number(trial.numbers, "time_s");
  return time ? time->value : kInfinite;
}

double worst_of(const std::vector<TrialCheck> &missed) {
  double worst = 0.0;
  for (const TrialCheck &check : missed)
    worst = std::max(worst, check.shortfall);
  return worst;
}

bool names_a_file(const std::string &key) {
  return key == "program" || key == "include" || key.starts_with("include.") || key.ends_with(".mesh");
}

/// Changes that keep the names of files right in another folder.
void add_moved_names(const toml::node &node, const std::string &key, const fs::path &from, const fs::path &to,
                     std::vector<JobChange> &changes) {
  if (const toml::table *table = node.as_table()) {
    for (const auto &[inner, value] : *table)
      add_moved_names(value, key.empty() ? std::string(inner.str()) : fmt::format("{}.{}", key, inner.str()),
                      from, to, changes);
  } else if (const toml::array *list = node.as_array()) {
    for (std::size_t i = 0; i < list->size(); ++i)
      add_moved_names((*list)[i], fmt::format("{}.{}", key, i + 1), from, to, changes);
  } else if (node.is_string() && names_a_file(key)) {
    const fs::path name = node.value<std::string>().value_or("");
    if (!name.empty() && name.is_relative())
      changes.push_back({key, toml_text(std::string_view((from / name).lexically_relative(to).string()))});
  }
}

/// The largest share of a limit that is used up; decides between plans of equal time.
double tightness_of(const Trial &trial) {
  double tightest = 0.0;
  for (const TrialCheck &check : trial.checks)
    if (check.limit > 0.0)
      tightest = std::max(tightest, check.predicted / check.limit);
  return tightest;
}

} // namespace

std::optional<ExtraLimit> read_limit(std::string_view text, bool is_upper, const StudyResults &results,
                                     Problems &problems) {
  ExtraLimit limit;
  const std::size_t equals = text.rfind('=');
  limit.id = std::string(text.substr(0, equals));
  limit.is_upper = is_upper;
  const char *end = text.data() + text.size();
  const bool is_number = equals != std::string_view::npos &&
                         std::from_chars(text.data() + equals + 1, end, limit.limit).ptr == end &&
                         equals + 1 < text.size() && std::isfinite(limit.limit);
  const std::vector<KeyNumber> columns = number_columns(results);
  if (is_number && find_number(columns, limit.id))
    return limit;
  std::string ids;
  for (const KeyNumber &column : columns)
    ids += (ids.empty() ? "" : ", ") + column.id;
  const std::string option = fmt::format("--at-{} {}", is_upper ? "most" : "least", text);
  if (!is_number)
    problems.error(option, 0, 0, "this is not a result, = and a number",
                   "Write it like --at-most rim/witness_depth_um=3.");
  else
    problems.error(option, 0, 0, fmt::format("no result is called {}", limit.id),
                   fmt::format("Choose from {}.", ids));
  return std::nullopt;
}

std::vector<TrialCheck> missed_checks(const Trial &trial, const std::vector<ExtraLimit> &limits) {
  std::vector<TrialCheck> missed;
  for (const TrialCheck &check : trial.checks)
    if (!check.met)
      missed.push_back(check);
  for (const ExtraLimit &limit : limits)
    if (const TrialCheck check = check_of(trial, limit); !check.met)
      missed.push_back(check);
  return missed;
}

BestPlan best_plan(const StudyResults &results, const std::vector<ExtraLimit> &limits) {
  BestPlan plan;
  plan.wants_anything = !limits.empty();
  std::pair best{kInfinite, kInfinite};
  std::tuple<bool, double, double> nearest{true, kInfinite, kInfinite};
  for (std::size_t i = 0; i < results.trials.size(); ++i) {
    const Trial &trial = results.trials[i];
    if (trial.status != TrialStatus::done)
      continue;
    plan.wants_anything = plan.wants_anything || !trial.checks.empty();
    const std::vector<TrialCheck> missed = missed_checks(trial, limits);
    if (missed.empty() && trial.dangers == 0) {
      ++plan.well_count;
      const std::pair rank{time_of(trial), tightness_of(trial)};
      if (!plan.best || rank < best) {
        plan.best = i;
        best = rank;
      }
    }
    const std::tuple distance{trial.dangers > 0, worst_of(missed), time_of(trial)};
    if (!plan.nearest || distance < nearest) {
      plan.nearest = i;
      nearest = distance;
    }
  }
  if (plan.best)
    plan.nearest.reset();
  return plan;
}

std::optional<std::string> job_text_of(const StudyHead &head, std::size_t combination,
                                       const fs::path &new_file, Problems &problems) {
  const std::string name = head.job_file.filename().string();
  auto text = changed_job_text(head.job_text, name, head.grid.changes(combination), problems);
  std::error_code ignored;
  const fs::path from = head.job_file.parent_path();
  const fs::path to = fs::absolute(new_file, ignored).lexically_normal().parent_path();
  if (!text || from == to)
    return text;
  std::vector<JobChange> moved;
  try {
    add_moved_names(toml::parse(*text), "", from, to, moved);
  } catch (const toml::parse_error &fault) {
    problems.error(name, 0, 0, std::string(fault.description()), "Correct the job file and study it anew.");
    return std::nullopt;
  }
  return changed_job_text(*text, name, moved, problems);
}

} // namespace asperity
