// The front door: nothing kept from before, nothing kept for later.
#include "asperity/predict/outcome.h"

#include "run_stages.h"

namespace asperity {

Outcome predict(const Job &job, const Program &program, const PredictOptions &options,
                const Progress &progress) {
  StageRuns runs;
  return run_stages(job, program, options, progress, {}, runs);
}

} // namespace asperity
