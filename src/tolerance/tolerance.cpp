// Draws the inputs, predicts each draw, and condenses the draws into bands.
#include "asperity/tolerance/tolerance.h"

#include "asperity/base/parallel.h"
#include "asperity/tolerance/coarser_job.h"
#include "asperity/tolerance/counter_draw.h"
#include "asperity/tolerance/variance_share.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <map>
#include <thread>

namespace asperity {

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// What one prediction is asked for.
struct Prediction {
  Status status = Status::done;
  std::string why;
  std::vector<KeyNumber> numbers;
  std::vector<WantedCheck> checks;
};

Prediction predicted(const Job &job, const Program &program, const ToleranceOptions &options, int threads) {
  const Outcome outcome =
      predict(job, program, {.threads = threads, .roughness = options.roughness}, Progress{});
  if (outcome.status != Status::done)
    return {outcome.status, outcome.why, {}, {}};
  return {Status::done, {}, key_numbers(outcome), outcome.checks};
}

/// One job under all draws: its inputs and, after the run, a row of numbers for every draw.
struct DrawnJob {
  Job job;
  const Program &program;
  std::vector<UncertainInput> inputs;
  Prediction stated;
  std::vector<std::vector<double>> values; ///< [draw][number], NaN where the draw has none
  std::vector<std::vector<bool>> met;      ///< [draw][check]

  std::vector<double> deviates(std::uint64_t seed, std::size_t draw) const {
    std::vector<double> result;
    for (const UncertainInput &input : inputs)
      result.push_back(normal_draw(seed, draw, input.id));
    return result;
  }
};

DrawnJob make_drawn_job(const JobToDraw &from, const ToleranceOptions &options) {
  DrawnJob drawn_job{
      coarser_job(from.job, options.coarser), from.program, uncertain_inputs(from.job), {}, {}, {}};
  drawn_job.stated = predicted(drawn_job.job, drawn_job.program, options, options.threads);
  drawn_job.values.resize(static_cast<std::size_t>(options.draws));
  drawn_job.met.resize(static_cast<std::size_t>(options.draws));
  return drawn_job;
}

/// Predicts one draw; its failure text, or empty.
std::string run_draw(DrawnJob &drawn_job, std::size_t draw, const ToleranceOptions &options) {
  const Job moved = job_with(drawn_job.job, drawn_job.inputs, drawn_job.deviates(options.seed, draw));
  const Prediction result = predicted(moved, drawn_job.program, options, 1);
  if (result.status != Status::done)
    return fmt::format("draw {} could not be predicted: {}", draw + 1, result.why);
  for (const KeyNumber &number : drawn_job.stated.numbers) {
    const KeyNumber *found = find_number(result.numbers, number.id);
    drawn_job.values[draw].push_back(found ? found->value : kNone);
  }
  for (std::size_t i = 0; i < drawn_job.stated.checks.size(); ++i)
    drawn_job.met[draw].push_back(i < result.checks.size() && result.checks[i].met);
  return {};
}

/// Runs all draws of all jobs, in any order: each writes its own place only.
std::string run_draws(std::vector<DrawnJob> &jobs, const ToleranceOptions &options,
                      const Progress &progress) {
  const auto draws = static_cast<std::size_t>(options.draws);
  std::vector<std::string> faults(draws);
  std::atomic<std::size_t> done{0};
  const auto caller = std::this_thread::get_id();
  for_each_band(draws, 1, options.threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t draw = begin; draw < end && !progress.cancelled(); ++draw) {
      for (DrawnJob &drawn_job : jobs)
        if (faults[draw].empty())
          faults[draw] = run_draw(drawn_job, draw, options);
      const std::size_t count = ++done;
      if (std::this_thread::get_id() == caller)
        progress.at(fmt::format("draw {} of {}", count, draws),
                    static_cast<double>(count) / static_cast<double>(draws));
    }
  });
  const auto fault =
      std::find_if(faults.begin(), faults.end(), [](const auto &each) { return !each.empty(); });
  return fault == faults.end() ? std::string() : *fault;
}

Band named_as(const KeyNumber &number) {
  Band band;
  band.id = number.id;
  band.feature = number.feature;
  band.what = number.what;
  band.unit = number.unit;
  band.better = number.better;
  return band;
}

/// Fills the band from the draws in which the number applies.
void condense(Band &band, const std::vector<double> &values, const std::vector<UncertainInput> &inputs,
              std::uint64_t seed) {
  std::vector<double> y;
  std::vector<std::size_t> rows;
  for (std::size_t draw = 0; draw < values.size(); ++draw)
    if (std::isfinite(values[draw])) {
      y.push_back(values[draw]);
      rows.push_back(draw);
    }
  band.draws = static_cast<int>(y.size());
  if (y.empty())
    return;
  Matrix deviates(rows.size(), inputs.size());
  for (std::size_t r = 0; r < rows.size(); ++r)
    for (std::size_t i = 0; i < inputs.size(); ++i)
      deviates(r, i) = normal_draw(seed, rows[r], inputs[i].id);
  const auto shares = first_order_shares(deviates, y, degree_for(rows.size(), inputs.size()));
  for (std::size_t i = 0; i < shares.size(); ++i)
    band.shares.push_back({inputs[i].id, shares[i]});
  std::stable_sort(band.shares.begin(), band.shares.end(),
                   [](const VarianceShare &a, const VarianceShare &b) { return a.share > b.share; });
  const Spread spread = spread_of(std::move(y));
  band.mean = spread.mean;
  band.standard_deviation = spread.standard_deviation;
  band.low = spread.low;
  band.high = spread.high;
}

/// Mean share of each input over the features' numbers that judge a plan.
std::vector<VarianceShare> most_wanted(const Tolerance &tolerance) {
  std::map<std::string, double> sum;
  double count = 0.0;
  for (const Band &band : tolerance.bands) {
    if (band.shares.empty() || band.better == Better::neither || band.feature.empty())
      continue;
    count += 1.0;
    for (const VarianceShare &each : band.shares)
      sum[each.input] += std::clamp(each.share, 0.0, 1.0);
  }
  std::vector<VarianceShare> result;
  for (const UncertainInput &input : tolerance.inputs)
    if (count > 0.0)
      result.push_back({input.id, sum[input.id] / count});
  std::stable_sort(result.begin(), result.end(),
                   [](const VarianceShare &a, const VarianceShare &b) { return a.share > b.share; });
  return result;
}

/// Inputs of all jobs, each once.
std::vector<UncertainInput> all_inputs(const std::vector<DrawnJob> &jobs) {
  std::vector<UncertainInput> inputs;
  for (const DrawnJob &drawn_job : jobs)
    for (const UncertainInput &input : drawn_job.inputs)
      if (std::none_of(inputs.begin(), inputs.end(), [&](const auto &each) { return each.id == input.id; }))
        inputs.push_back(input);
  return inputs;
}

/// Runs everything but the bands; status and why are set where it did not come to an end.
Tolerance drawn(std::vector<DrawnJob> &jobs, const ToleranceOptions &options, const Progress &progress) {
  Tolerance tolerance;
  tolerance.draws = options.draws;
  tolerance.seed = options.seed;
  tolerance.inputs = all_inputs(jobs);
  for (const DrawnJob &drawn_job : jobs)
    if (drawn_job.stated.status != Status::done) {
      tolerance.status = drawn_job.stated.status;
      tolerance.why = drawn_job.stated.why;
      return tolerance;
    }
  tolerance.why = run_draws(jobs, options, progress);
  if (progress.cancelled())
    tolerance.status = Status::cancelled;
  else if (!tolerance.why.empty())
    tolerance.status = Status::too_large;
  return tolerance;
}

std::vector<double> column(const DrawnJob &drawn_job, std::size_t number) {
  std::vector<double> values;
  for (const auto &row : drawn_job.values)
    values.push_back(row[number]);
  return values;
}

} // namespace

Tolerance tolerance_of(const JobToDraw &job, const ToleranceOptions &options, const Progress &progress) {
  progress.at("predicting the stated values", 0.0);
  std::vector<DrawnJob> jobs;
  jobs.push_back(make_drawn_job(job, options));
  Tolerance tolerance = drawn(jobs, options, progress);
  if (tolerance.status != Status::done)
    return tolerance;
  const DrawnJob &drawn_job = jobs.front();
  for (std::size_t i = 0; i < drawn_job.stated.numbers.size(); ++i) {
    Band band = named_as(drawn_job.stated.numbers[i]);
    band.value = drawn_job.stated.numbers[i].value;
    condense(band, column(drawn_job, i), tolerance.inputs, options.seed);
    tolerance.bands.push_back(std::move(band));
  }
  for (std::size_t i = 0; i < drawn_job.stated.checks.size(); ++i) {
    const auto met =
        std::count_if(drawn_job.met.begin(), drawn_job.met.end(), [i](const auto &row) { return row[i]; });
    const WantedCheck &check = drawn_job.stated.checks[i];
    tolerance.conformances.push_back({check.feature, check.what, check.wanted,
                                      static_cast<double>(met) / static_cast<double>(options.draws)});
  }
  tolerance.most_wanted = most_wanted(tolerance);
  return tolerance;
}

Tolerance tolerance_of_difference(const JobToDraw &first, const JobToDraw &second,
                                  const ToleranceOptions &options, const Progress &progress) {
  progress.at("predicting the stated values", 0.0);
  std::vector<DrawnJob> jobs;
  jobs.push_back(make_drawn_job(first, options));
  jobs.push_back(make_drawn_job(second, options));
  Tolerance tolerance = drawn(jobs, options, progress);
  if (tolerance.status != Status::done)
    return tolerance;
  const auto &left = jobs[0].stated.numbers, &right = jobs[1].stated.numbers;
  for (std::size_t i = 0; i < left.size(); ++i) {
    const KeyNumber *match = find_number(right, left[i].id);
    if (!match)
      continue;
    std::vector<double> values = column(jobs[1], static_cast<std::size_t>(match - right.data()));
    const std::vector<double> minus = column(jobs[0], i);
    for (std::size_t draw = 0; draw < values.size(); ++draw)
      values[draw] -= minus[draw];
    Band band = named_as(left[i]);
    band.value = match->value - left[i].value;
    condense(band, values, tolerance.inputs, options.seed);
    tolerance.bands.push_back(std::move(band));
  }
  tolerance.most_wanted = most_wanted(tolerance);
  return tolerance;
}

const Band *find_band(const Tolerance &tolerance, std::string_view id) {
  const auto found = std::find_if(tolerance.bands.begin(), tolerance.bands.end(),
                                  [id](const Band &band) { return band.id == id; });
  return found == tolerance.bands.end() ? nullptr : &*found;
}

} // namespace asperity
