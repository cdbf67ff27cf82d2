#include "asperity/predict/outcome.h"

#include "wanted_checks.h"

#include "asperity/cut/walk.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <limits>

namespace asperity {

namespace {

/// Memory that can be had without swapping [bytes]; a large number where the system does not tell.
double free_memory_bytes() {
  std::ifstream meminfo("/proc/meminfo");
  std::string key, unit;
  double kib = 0;
  while (meminfo >> key >> kib >> unit)
    if (key == "MemAvailable:")
      return kib * 1024.0;
  return 1e18;
}

double memory_bound_bytes(const Job &job, const TimedPath &path) {
  // A station leaves one sample and at most one swept piece; stations stand a small share of a radius apart.
  double stations = 0.0, smallest_radius_mm = 1e9;
  for (const Cutter &cutter : job.cutters)
    smallest_radius_mm = std::min(smallest_radius_mm, 0.5 * cutter.diameter_mm);
  for (const PathPiece &piece : path.pieces)
    stations += 2.0 + piece.length_mm / (smallest_radius_mm / 12.0);
  double bytes = static_cast<double>(stock_bytes(job, path)) +
                 stations * static_cast<double>(sizeof(CutSample) + sizeof(SweptPiece));
  for (const Feature &feature : job.features)
    bytes += chart_cells(job, feature) * kBytesPerCell;
  return bytes;
}

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
    Chart chart = make_chart(outcome.job, feature, threads);
    const bool done = std::holds_alternative<WallChart>(chart)
                          ? sweep_wall(std::get<WallChart>(chart), outcome.cut.swept, threads, progress)
                          : sweep_floor(std::get<FloorChart>(chart), outcome.cut.swept, threads, progress);
    if (!done)
      return false;
    outcome.charts.push_back(std::move(chart));
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
  const double bound = memory_bound_bytes(job, outcome.path);
  const double limit = options.memory_limit_bytes > 0 ? static_cast<double>(options.memory_limit_bytes)
                                                      : 0.8 * free_memory_bytes();
  outcome.memory_bound_bytes = static_cast<std::size_t>(std::min(bound, 1e18));
  if (bound > limit)
    return stop(Status::too_large,
                fmt::format("this needs up to {:.1f} GB of memory and {:.1f} GB can be had: choose "
                            "a coarser chart spacing",
                            bound * 1e-9, limit * 1e-9));

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
  if (!read_roughness(outcome, options.threads, progress))
    return stop(Status::cancelled, "cancelled");
  outcome.findings = find_all({outcome.job, outcome.path, outcome.cut, outcome.charts});
  outcome.checks = wanted_checks(outcome);
  outcome.notes = honest_notes(outcome);
  progress.at("done", 1.0);
  return outcome;
}

} // namespace asperity
