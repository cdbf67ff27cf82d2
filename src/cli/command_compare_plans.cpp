// Several jobs read together and predicted one after the other.
#include "command_compare_plans.h"

#include "asperity/report/summary_text.h"
#include "asperity/tolerance/tolerance.h"
#include "output.h"
#include "progress_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

/// Progress of one part of the work, named and laid into the whole.
struct Part {
  ProgressLine &line;
  std::string name;
  double begin = 0, share = 1;

  void show(std::string_view stage, double fraction) const {
    line.show(fmt::format("{}: {}", name, stage), begin + share * std::clamp(fraction, 0.0, 1.0));
  }
};

/// Empty, or why there is no uncertainty.
std::string add_uncertainty(PredictedPlans &plans, const std::vector<Inputs> &inputs,
                            const PlansRequest &request, const Progress &progress) {
  for (std::size_t k = 1; k < inputs.size(); ++k) {
    const Tolerance known =
        tolerance_of_difference({inputs[0].job, inputs[0].program}, {inputs[k].job, inputs[k].program},
                                {.draws = request.draws, .threads = request.threads}, progress);
    if (known.status != Status::done)
      return known.why;
    std::vector<NumberBand> bands;
    for (const Band &band : known.bands)
      if (band.draws > 1)
        bands.push_back({band.id, {band.low, band.high}});
    apply_bands(plans.comparison, k, bands);
  }
  return {};
}

} // namespace

std::vector<const Outcome *> PredictedPlans::pointers() const {
  std::vector<const Outcome *> all;
  for (const Outcome &outcome : outcomes)
    all.push_back(&outcome);
  return all;
}

std::optional<std::vector<Inputs>> read_plans(const std::vector<std::filesystem::path> &jobs) {
  std::vector<Inputs> all;
  for (const std::filesystem::path &job : jobs) {
    Problems problems;
    std::optional<Inputs> inputs = read_inputs(job, problems);
    std::fputs(text_of(problems).c_str(), stderr);
    if (inputs)
      all.push_back(std::move(*inputs));
  }
  if (all.size() != jobs.size())
    return std::nullopt;
  return all;
}

PredictedPlans predict_plans(const std::vector<Inputs> &inputs, const PlansRequest &request,
                             Progress &progress) {
  PredictedPlans plans;
  ProgressLine line(!request.quiet, ::isatty(STDERR_FILENO));
  const double parts = static_cast<double>(inputs.size()) * (request.draws > 0 ? 2.0 : 1.0);
  Part part{line, {}, 0.0, 1.0 / parts};
  progress.report = [&part](std::string_view stage, double fraction) { part.show(stage, fraction); };
  std::string fault;
  for (std::size_t k = 0; k < inputs.size() && fault.empty() && !progress.cancelled(); ++k) {
    part.name = "plan " + plan_letter(k);
    part.begin = static_cast<double>(k) / parts;
    plans.outcomes.push_back(
        predict(inputs[k].job, inputs[k].program, {.threads = request.threads}, progress));
    if (plans.outcomes.back().status == Status::too_large)
      fault = fmt::format("{}: {}", inputs[k].job.file.string(), plans.outcomes.back().why);
  }
  if (fault.empty() && !progress.cancelled()) {
    plans.comparison = compare(plans.pointers());
    part.name = "uncertainty";
    part.begin = part.share = 0.5;
    if (request.draws > 0 && inputs.size() > 1)
      fault = add_uncertainty(plans, inputs, request, progress);
  }
  progress.report = {};
  if (progress.cancelled())
    plans.ended = ExitStatus::interrupted;
  else if (!fault.empty())
    plans.ended = fail(fault);
  return plans;
}

ExitStatus status_of(const std::vector<Outcome> &outcomes) {
  return std::all_of(outcomes.begin(), outcomes.end(), [](const Outcome &o) { return is_all_well(o); })
             ? ExitStatus::all_well
             : ExitStatus::missed;
}

} // namespace asperity
