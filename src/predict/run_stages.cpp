// Path, cut, charts, sweep, and what they mean; results of an earlier outcome are taken over where nothing
// that they rest on has changed.
#include "run_stages.h"

#include "early_sweep.h"
#include "feature_result.h"
#include "memory_need.h"
#include "same_bits.h"
#include "stage_inputs.h"
#include "stages.h"
#include "wanted_checks.h"

#include "asperity/base/parallel.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/texture/own_roughness.h"

#include <algorithm>
#include <limits>

namespace asperity {

namespace {

/// Which results of the kept outcome still hold.
struct Holding {
  bool path = false, cut = false, swept = false;
  std::vector<char> chart_made, chart, sizes, roughness; ///< by feature
  bool findings = false;
};

class Stages {
public:
  Stages(Outcome &outcome, const PredictOptions &options, const Progress &progress, const Kept &kept,
         StageRuns &runs, MemoryCheck &memory)
      : outcome_(outcome), job_(outcome.job), options_(options), progress_(progress), kept_(kept),
        runs_(runs), memory_(memory) {
    silent_.heeds = &progress_;
  }

  /// False if cancelled.
  bool run();

private:
  const Outcome &old() const { return *kept_.outcome; }
  void cut_and_make_charts();
  void cut(SideTasks &beside);
  void make_charts(SideTasks &beside);
  std::vector<WalkStop> early_stops(SideTasks &beside);
  void sweep_beside(std::size_t feature, bool begins, SideTasks &beside);
  void sweep_stretches(std::size_t feature);
  void read_early(std::size_t feature);
  void settle_paths();
  bool has_room_for_record();
  bool sweep_charts();
  void find_meaning();
  void measure_and_find();
  void do_tasks(const std::vector<std::function<void()>> &tasks);
  void read_roughness(std::size_t feature);
  const FeaturePath &path_of(std::size_t feature);

  Outcome &outcome_;
  const Job &job_;
  const PredictOptions &options_;
  const Progress &progress_;
  const Kept &kept_;
  StageRuns &runs_;
  MemoryCheck &memory_;
  Holding holds_;
  Progress silent_;                               ///< for what any thread may do: it reports nothing
  std::vector<std::optional<FeaturePath>> paths_; ///< what features are swept under; none until asked for
  /// Of those that are swept and read while the rest of the path is still being cut.
  std::vector<EarlySweep> sweeps_;
  std::vector<std::size_t> stretches_swept_;
  std::vector<char> early_; ///< is done
};

/// The same chart with nothing swept.
Chart unswept(Chart chart) {
  std::visit(
      [](auto &c) {
        std::fill(c.envelope_mm.begin(), c.envelope_mm.end(), std::numeric_limits<float>::infinity());
        std::fill(c.owner.begin(), c.owner.end(), kNobody);
      },
      chart);
  return chart;
}

bool Stages::run() {
  const std::size_t count = job_.features.size();
  const bool same_features = kept_.outcome != nullptr && old().job.features.size() == count;
  holds_.path = kept_.outcome != nullptr && same_bits(old().path, outcome_.path);
  holds_.cut = holds_.path && same_for_cut(old().job, job_);
  holds_.chart_made.assign(count, 0);
  for (std::size_t i = 0; i < count; ++i)
    holds_.chart_made[i] = same_features && same_for_chart(old().job, job_, i);
  paths_.resize(count);
  cut_and_make_charts();
  if (progress_.cancelled() || !has_room_for_record() || !sweep_charts())
    return false;
  find_meaning();
  if (progress_.cancelled())
    return false;
  outcome_.checks = wanted_checks(outcome_, options_.roughness);
  outcome_.notes = honest_notes(outcome_, options_.roughness);
  progress_.at("done", 1.0);
  return true;
}

/// The walk goes in time order on one thread; what does not wait for it is done beside it, and by all threads
/// once the walk is over.
void Stages::cut_and_make_charts() {
  const std::size_t count = job_.features.size();
  outcome_.charts.resize(count);
  outcome_.features.resize(count);
  outcome_.roughness.resize(count);
  early_.assign(count, 0);
  sweeps_ = std::vector<EarlySweep>(count);
  stretches_swept_.assign(count, 0);
  side_by_side(
      {[this](SideTasks &beside) { cut(beside); }, [this](SideTasks &beside) { make_charts(beside); }},
      memory_.beside_cut() ? options_.threads : 1);
  holds_.swept = holds_.path && (holds_.cut || same_bits(old().cut.swept, outcome_.cut.swept));
  if (!holds_.cut && !progress_.cancelled())
    settle_paths();
}

void Stages::cut(SideTasks &beside) {
  if (holds_.cut) {
    outcome_.cut = old().cut;
    return;
  }
  ++runs_.cut;
  for (std::size_t i = 0; i < paths_.size(); ++i)
    paths_[i].emplace(job_, outcome_.path, job_.features[i]);
  Stock stock = make_stock(job_, outcome_.path, options_.threads);
  outcome_.cut = walk_path(job_, outcome_.path, stock, progress_, early_stops(beside));
}

void Stages::make_charts(SideTasks &beside) {
  for (std::size_t i = 0; i < job_.features.size() && !progress_.cancelled(); ++i) {
    if (!holds_.chart_made[i]) {
      ++runs_.charts_made;
      outcome_.charts[i] = make_chart(job_, job_.features[i], options_.threads);
    } else if (!holds_.cut) {
      outcome_.charts[i] = unswept(old().charts[i]); // what is cut anew is all but surely swept anew
    }
    sweep_beside(i, sweeps_[i].chart_is_ready(), beside);
  }
}

/// Where a stretch of path is cut that a feature can be swept under, as the path leaves it alone for good.
std::vector<WalkStop> Stages::early_stops(SideTasks &beside) {
  std::vector<WalkStop> stops;
  if (!memory_.beside_cut())
    return stops;
  for (std::size_t i = 0; i < paths_.size(); ++i)
    for (std::size_t k = 0; paths_[i]->is_early() && k < paths_[i]->stretches(); ++k)
      stops.push_back({paths_[i]->stretch_end(k), [this, i, k, &beside](const SweptPath &so_far) {
                         if (k + 1 == paths_[i]->stretches())
                           paths_[i]->take(so_far);
                         sweep_beside(i, sweeps_[i].add(paths_[i]->stretch(k, so_far)), beside);
                       }});
  std::stable_sort(stops.begin(), stops.end(),
                   [](const WalkStop &a, const WalkStop &b) { return a.piece < b.piece; });
  return stops;
}

/// Where there is something to sweep that nobody sees to yet.
void Stages::sweep_beside(std::size_t feature, bool begins, SideTasks &beside) {
  if (begins)
    beside.add([this, feature] { sweep_stretches(feature); });
}

void Stages::sweep_stretches(std::size_t feature) {
  while (const auto stretch = sweeps_[feature].take()) {
    if (!sweep_chart(outcome_.charts[feature], *stretch, options_.threads, silent_))
      return;
    if (++stretches_swept_[feature] == paths_[feature]->stretches())
      read_early(feature);
  }
}

void Stages::read_early(std::size_t feature) {
  if (options_.roughness)
    read_roughness(feature);
  outcome_.features[feature] = feature_result(job_.features[feature], outcome_.charts[feature]);
  early_[feature] = 1;
}

/// Of one feature only one thread asks at a time.
const FeaturePath &Stages::path_of(std::size_t feature) {
  std::optional<FeaturePath> &path = paths_[feature];
  if (!path) {
    path.emplace(job_, outcome_.path, job_.features[feature]);
    path->settle(job_, job_.features[feature], outcome_.cut.swept);
  }
  return *path;
}

/// What was begun too early is begun again.
void Stages::settle_paths() {
  for (std::size_t i = 0; i < paths_.size(); ++i) {
    const bool holds = paths_[i]->settle(job_, job_.features[i], outcome_.cut.swept);
    if (stretches_swept_[i] > 0 && !(holds && early_[i])) {
      early_[i] = 0;
      outcome_.charts[i] = unswept(std::move(outcome_.charts[i]));
    }
  }
}

bool Stages::has_room_for_record() {
  outcome_.why = memory_.fault_after(outcome_.cut);
  outcome_.memory_bound = memory_.bound().rounded();
  if (!outcome_.why.empty())
    outcome_.status = Status::too_large;
  return outcome_.why.empty();
}

bool Stages::sweep_charts() {
  const std::size_t count = job_.features.size();
  holds_.chart.assign(count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    progress_.at("sweeping " + name_of(job_.features[i]),
                 static_cast<double>(i) / static_cast<double>(count));
    holds_.chart[i] = holds_.swept && holds_.chart_made[i] && !early_[i];
    if (holds_.chart[i]) {
      outcome_.charts[i] = old().charts[i];
    } else {
      ++runs_.charts_swept;
      if (!early_[i] &&
          !sweep_feature(outcome_.charts[i], path_of(i), outcome_.cut.swept, options_.threads, progress_))
        return false;
    }
    if (options_.chart_swept)
      options_.chart_swept(i, outcome_.charts[i]);
  }
  return true;
}

/// Sizes, roughness and findings wait for nothing but the charts: they share the threads.
void Stages::find_meaning() {
  progress_.at("measuring and reading roughness", 0.0);
  std::vector<std::function<void()>> tasks{[this] { measure_and_find(); }};
  for (std::size_t i = 0; i < job_.features.size(); ++i) {
    const bool rough_holds =
        holds_.chart[i] && holds_.swept && kept_.had_roughness && same_for_roughness(old().job, job_, i);
    if (rough_holds && options_.roughness) {
      outcome_.roughness[i] = old().roughness[i];
      if (!same_own_roughness(old().job, job_))
        add_own_roughness(outcome_.roughness[i], job_.material);
    } else if (options_.roughness) {
      ++runs_.roughness;
      if (!early_[i])
        tasks.push_back([this, i] { read_roughness(i); });
    }
  }
  do_tasks(tasks);
}

/// Both look at walls away from flaws.
void Stages::measure_and_find() {
  std::vector<std::size_t> to_measure;
  for (std::size_t i = 0; i < job_.features.size(); ++i) {
    if (holds_.chart[i] && same_for_sizes(old().job, job_, i)) {
      outcome_.features[i] = old().features[i];
      continue;
    }
    ++runs_.sizes;
    if (!early_[i])
      to_measure.push_back(i);
  }
  const bool findings_hold = holds_.cut && holds_.swept && same_for_findings(old().job, job_) &&
                             std::all_of(holds_.chart.begin(), holds_.chart.end(), [](char h) { return h; });
  if (findings_hold)
    outcome_.findings = old().findings;
  else
    ++runs_.findings;
  if (findings_hold && to_measure.empty())
    return;

  const WallReferences references(outcome_.charts, options_.threads);
  std::vector<std::function<void()>> tasks; // those first that threads cannot share within
  for (const std::size_t i : to_measure)
    tasks.push_back([this, i, &references] {
      outcome_.features[i] = feature_result(job_.features[i], outcome_.charts[i], &references.of(i));
    });
  if (!findings_hold)
    tasks.push_back([this, &references] {
      outcome_.findings =
          find_all({job_, outcome_.path, outcome_.cut, outcome_.charts, options_.threads, &references});
    });
  do_tasks(tasks);
}

void Stages::do_tasks(const std::vector<std::function<void()>> &tasks) {
  for_each_band(tasks.size(), 1, options_.threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end && !progress_.cancelled(); ++i)
      tasks[i]();
  });
}

void Stages::read_roughness(std::size_t feature) {
  const TextureSource source{job_, outcome_.path, path_of(feature).of(outcome_.cut.swept)};
  outcome_.roughness[feature] =
      roughness_of(job_.features[feature], outcome_.charts[feature], source, options_.threads, silent_);
}

} // namespace

Outcome run_stages(const Job &job, const Program &program, const PredictOptions &options,
                   const Progress &progress, const Kept &kept, StageRuns &runs) {
  Outcome outcome;
  outcome.job = job;
  outcome.program = without_moves(program);
  outcome.program_moves = program.moves.size();
  const auto stop = [&](Status status, std::string why) {
    outcome.status = status;
    outcome.why = std::move(why);
    return std::move(outcome);
  };

  // The path, and whether there is room for the rest.
  progress.at("timing the path", 0.0);
  outcome.path = plan_motion(program, job.machine, job.setup, job.effects);
  MemoryCheck memory(memory_need(job, outcome.path, job.features), kept.outcome, options);
  outcome.memory_bound = memory.bound().rounded();
  if (std::string fault = memory.fault(); !fault.empty())
    return stop(Status::too_large, std::move(fault));
  if (!Stages(outcome, options, progress, kept, runs, memory).run())
    return outcome.status == Status::too_large ? outcome : stop(Status::cancelled, "cancelled");
  return outcome;
}

} // namespace asperity
