#include "asperity/predict/outcome.h"

#include "stages.h"
#include "wanted_checks.h"

#include <algorithm>
#include <limits>

namespace asperity {

namespace {

FeatureResult result_of(const Feature &feature, const Chart &chart) {
  FeatureResult result;
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    result.sizes = measure_wall(*wall, std::get<WallChart>(chart));
  else if (const auto *floor = std::get_if<FloorFeature>(&feature))
    result.sizes = measure_floor(*floor, std::get<FloorChart>(chart));
  else
    result.sizes = measure_dome(std::get<DomeFeature>(feature), std::get<FloorChart>(chart));

  // Residual over the cells a pass has cut.
  std::size_t cells = 0, cut = 0;
  double sum = 0.0, low = std::numeric_limits<double>::infinity(), high = -low;
  const auto count = [&](const auto &c, std::size_t cell) {
    ++cells;
    if (!c.is_cut(cell))
      return;
    ++cut;
    const double e = c.residual_mm(cell);
    sum += e;
    low = std::min(low, e);
    high = std::max(high, e);
  };
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    for (std::size_t cell = 0; cell < wall->envelope_mm.size(); ++cell)
      count(*wall, cell);
  } else {
    const auto &floor = std::get<FloorChart>(chart);
    for (std::size_t cell = 0; cell < floor.envelope_mm.size(); ++cell)
      if (floor.in_feature(cell))
        count(floor, cell);
  }
  if (cut > 0) {
    result.cut_share = static_cast<double>(cut) / static_cast<double>(cells);
    result.lowest_um = low * 1e3;
    result.mean_um = sum / static_cast<double>(cut) * 1e3;
    result.highest_um = high * 1e3;
  }
  return result;
}

/// Sweeps every chart; false if cancelled.
bool sweep_charts(Outcome &outcome, int threads, const Progress &progress) {
  const auto count = static_cast<double>(outcome.job.features.size());
  for (const Feature &feature : outcome.job.features) {
    progress.at("sweeping " + name_of(feature), static_cast<double>(outcome.charts.size()) / count);
    std::optional<Chart> chart = swept_chart(outcome.job, feature, outcome.cut.swept, threads, progress);
    if (!chart)
      return false;
    outcome.charts.push_back(std::move(*chart));
  }
  return true;
}

/// Reads every feature's roughness; false if cancelled.
bool read_roughness(Outcome &outcome, int threads, const Progress &progress) {
  const TextureSource source{outcome.job, outcome.path, outcome.cut.swept};
  for (std::size_t i = 0; i < outcome.job.features.size(); ++i) {
    progress.at("reading the roughness of " + name_of(outcome.job.features[i]),
                static_cast<double>(i) / static_cast<double>(outcome.job.features.size()));
    outcome.roughness.push_back(
        roughness_of(outcome.job.features[i], outcome.charts[i], source, threads, progress));
    if (progress.cancelled())
      return false;
  }
  return true;
}

} // namespace

Outcome predict(const Job &job, const Program &program, const PredictOptions &options,
                const Progress &progress) {
  Outcome outcome;
  outcome.job = job;
  outcome.program = program;
  const auto stop = [&](Status status, std::string why) {
    outcome.status = status;
    outcome.why = std::move(why);
    return outcome;
  };

  // The path, and whether there is room for the rest.
  progress.at("timing the path", 0.0);
  outcome.path = plan_motion(program, job.machine, job.setup, job.effects);
  const double bound = memory_bound_bytes(job, outcome.path, job.features);
  outcome.memory_bound_bytes = static_cast<std::size_t>(std::min(bound, 1e18));
  if (std::string fault = memory_fault(bound, options.memory_limit_bytes); !fault.empty())
    return stop(Status::too_large, std::move(fault));

  // Cut in time order, then sweep in any order.
  {
    Stock stock = make_stock(job, outcome.path);
    outcome.cut = walk_path(job, outcome.path, stock, progress);
  }
  if (progress.cancelled() || !sweep_charts(outcome, options.threads, progress))
    return stop(Status::cancelled, "cancelled");

  // What it means.
  progress.at("measuring", 0.0);
  for (std::size_t i = 0; i < job.features.size(); ++i)
    outcome.features.push_back(result_of(job.features[i], outcome.charts[i]));
  if (!options.roughness)
    outcome.roughness.resize(job.features.size());
  else if (!read_roughness(outcome, options.threads, progress))
    return stop(Status::cancelled, "cancelled");
  outcome.findings = find_all({outcome.job, outcome.path, outcome.cut, outcome.charts});
  outcome.checks = wanted_checks(outcome, options.roughness);
  outcome.notes = honest_notes(outcome, options.roughness);
  progress.at("done", 1.0);
  return outcome;
}

} // namespace asperity
