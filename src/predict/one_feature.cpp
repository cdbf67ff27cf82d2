// The prediction as far as one feature needs it.
#include "asperity/predict/one_feature.h"

#include "memory_need.h"
#include "stages.h"

#include "asperity/predict/chart_plan.h"

#include <cassert>

namespace asperity {

OneFeature predict_one_feature(const Job &job, const Program &program, std::size_t feature,
                               const PredictOptions &options, const Progress &progress) {
  assert(feature < job.features.size());
  const Feature &wanted = job.features[feature];
  OneFeature result;
  const auto stop = [&](Status status, std::string why) {
    result.status = status;
    result.why = std::move(why);
    return std::move(result);
  };

  // The path, and whether there is room for the rest.
  progress.at("timing the path", 0.0);
  result.path = plan_motion(program, job.machine, job.setup, job.effects);
  const MemoryCheck memory(memory_need(job, result.path, {&wanted, 1}), nullptr, options);
  if (std::string fault = memory.fault(); !fault.empty())
    return stop(Status::too_large, std::move(fault));

  // Everything is cut, because earlier cuts decide what later ones meet; only one feature is swept.
  {
    Stock stock = make_stock(job, result.path);
    result.cut = walk_path(job, result.path, stock, progress);
  }
  if (progress.cancelled())
    return stop(Status::cancelled, "cancelled");
  progress.at("sweeping " + name_of(wanted), 0.0);
  FeaturePath feature_path(job, result.path, wanted);
  feature_path.settle(job, wanted, result.cut.swept);
  result.chart = make_chart(job, wanted, options.threads);
  if (!sweep_feature(result.chart, feature_path, result.cut.swept, options.threads, progress))
    return stop(Status::cancelled, "cancelled");
  return result;
}

} // namespace asperity
