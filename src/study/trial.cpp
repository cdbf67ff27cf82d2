// What a study keeps of one outcome.
#include "asperity/study/trial.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

namespace asperity {

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// Where the wanted limit is 0 there is no share of it: the excess then counts in these [mm, um].
constexpr double kUnitOfZero_mm = 0.01, kUnitOfZero_um = 1.0;

double excess_over(double limit, double value, const std::string &unit) {
  if (value <= limit)
    return 0.0;
  const double zero_unit = unit == "mm" ? kUnitOfZero_mm : kUnitOfZero_um;
  return (value - limit) / (limit > 0.0 ? limit : zero_unit);
}

double outside_of(const SizeWanted &wanted, double value) {
  const double beyond = std::max({wanted.lower_mm - value, value - wanted.upper_mm, 0.0});
  const double half = 0.5 * (wanted.upper_mm - wanted.lower_mm);
  return beyond / (half > 0.0 ? half : kUnitOfZero_mm);
}

/// The upper limit that a check of a finish was made against.
std::optional<double> limit_of(const FinishWanted &finish, const std::string &what) {
  if (what.starts_with("Ra"))
    return finish.ra_um;
  if (what.starts_with("lip"))
    return finish.lip_mm;
  return what.starts_with("witness") ? finish.witness_depth_um : std::nullopt;
}

TrialCheck check_of(const Outcome &outcome, const WantedCheck &check) {
  TrialCheck result{check.feature, check.what, check.wanted, check.predicted,
                    check.unit,    check.met,  kUnknown,     check.met ? 0.0 : kInfinite};
  for (std::size_t i = 0; i < outcome.job.features.size(); ++i) {
    if (name_of(outcome.job.features[i]) != check.feature)
      continue;
    const auto limit = limit_of(finish_of(outcome.job.features[i]), check.what);
    result.limit = limit.value_or(kUnknown);
    if (check.met || !std::isfinite(check.predicted))
      return result;
    for (const SizeMeasure &size : outcome.features[i].sizes)
      if (size.what == check.what && size.wanted)
        result.shortfall = outside_of(*size.wanted, check.predicted);
    if (limit)
      result.shortfall = excess_over(*limit, check.predicted, check.unit);
  }
  return result;
}

std::size_t count_of(const Outcome &outcome, Weight weight) {
  return static_cast<std::size_t>(
      std::count_if(outcome.findings.begin(), outcome.findings.end(),
                    [weight](const Finding &finding) { return finding.weight == weight; }));
}

} // namespace

std::string_view name_of(TrialStatus status) {
  constexpr std::array<std::string_view, 3> kNames{"done", "wrong", "too_large"};
  return kNames[static_cast<std::size_t>(status)];
}

bool Trial::all_met() const {
  return std::all_of(checks.begin(), checks.end(), [](const TrialCheck &check) { return check.met; });
}

double Trial::worst_shortfall() const {
  double worst = 0.0;
  for (const TrialCheck &check : checks)
    worst = std::max(worst, check.shortfall);
  return worst;
}

Trial trial_of(const Outcome &outcome, std::size_t combination) {
  Trial trial;
  trial.combination = combination;
  if (outcome.status != Status::done) {
    trial.status = TrialStatus::too_large;
    trial.why = outcome.why;
    return trial;
  }
  trial.numbers = key_numbers(outcome);
  for (const WantedCheck &check : outcome.checks)
    trial.checks.push_back(check_of(outcome, check));
  trial.dangers = count_of(outcome, Weight::danger);
  trial.flaws = count_of(outcome, Weight::flaw);
  return trial;
}

std::vector<KeyNumber> number_columns(const StudyResults &results) {
  std::vector<KeyNumber> columns;
  std::set<std::string> known;
  for (const Trial &trial : results.trials)
    for (const KeyNumber &number : trial.numbers)
      if (known.insert(number.id).second)
        columns.push_back(number);
  return columns;
}

} // namespace asperity
