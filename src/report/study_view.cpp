// What every output of a study shows.
#include "asperity/report/study_view.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

std::size_t StudyView::count(TrialStatus status) const {
  return static_cast<std::size_t>(
      std::count_if(results.trials.begin(), results.trials.end(),
                    [status](const Trial &trial) { return trial.status == status; }));
}

StudyView study_view(StudyResults results, const StudyWish &wish, std::string &fault) {
  StudyView view;
  view.results = std::move(results);
  view.limits = wish.limits;
  view.columns = number_columns(view.results);
  view.best = best_plan(view.results, view.limits);
  const bool is_empty = view.columns.empty();
  if (is_empty && wish.x.empty() && wish.y.empty())
    return view;
  view.y_id = wish.y.empty() ? default_y(view.results) : wish.y;
  view.front = front_of(view.results, wish.x.empty() ? default_x(view.results) : wish.x, view.y_id, fault);
  if (fault.empty())
    view.influence = influence_on(view.results, view.y_id);
  return view;
}

std::vector<std::string> short_keys(const StudyGrid &grid) {
  std::vector<std::string> names;
  for (const Factor &factor : grid.factors) {
    std::string name = factor.key.substr(factor.key.rfind('.') + 1);
    const auto ends_so = [&](const Factor &other) {
      return other.key == name || other.key.ends_with('.' + name);
    };
    const auto alike = std::count_if(grid.factors.begin(), grid.factors.end(), ends_so);
    names.push_back(alike > 1 ? factor.key : std::move(name));
  }
  return names;
}

std::string share_text(double share) {
  constexpr double kLeast = 0.005;
  return share > 0.0 && share < kLeast ? "< 1 %" : fixed_text(100.0 * share, 0) + " %";
}

std::string words_of(const KeyNumber &number) {
  const std::string of = number.feature.empty() ? std::string() : fmt::format(", {}", number.feature);
  return fmt::format("{}{}{}", number.what, of, number.unit.empty() ? "" : fmt::format(" ({})", number.unit));
}

double wanted_limit(const StudyView &view, const KeyNumber &number) {
  double limit = std::numeric_limits<double>::quiet_NaN();
  const auto take = [&](double value) { limit = std::isnan(limit) ? value : std::min(limit, value); };
  const std::string key = number.id.substr(std::min(number.id.size(), number.feature.size() + 1));
  const auto judges = [&](const TrialCheck &check) {
    return (check.what.starts_with("witness") && (key == "witness_depth_um" || key == "level_step_um")) ||
           (check.what.starts_with("Ra") && key == "ra_high_um") ||
           (check.what.starts_with("lip") && key == "lip_mm");
  };
  for (const Trial &trial : view.results.trials)
    for (const TrialCheck &check : trial.checks)
      if (check.feature == number.feature && !std::isnan(check.limit) && judges(check))
        take(check.limit);
  for (const ExtraLimit &extra : view.limits)
    if (extra.id == number.id && extra.is_upper)
      take(extra.limit);
  return limit;
}

std::optional<std::size_t> shown_plan(const BestPlan &plan) { return plan.best ? plan.best : plan.nearest; }

} // namespace asperity
