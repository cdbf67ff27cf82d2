// Keeps the last outcome that is done, and hands it to the stages.
#include "asperity/predict/repredictor.h"

#include "run_stages.h"

namespace asperity {

std::shared_ptr<const Outcome> Repredictor::predict(const Job &job, const Program &program,
                                                    const PredictOptions &options, const Progress &progress) {
  runs_ = {};
  auto outcome = std::make_shared<const Outcome>(
      run_stages(job, program, options, progress, {last_.get(), last_had_roughness_}, runs_));
  if (outcome->status == Status::done) {
    last_ = outcome;
    last_had_roughness_ = options.roughness;
  }
  return outcome;
}

} // namespace asperity
