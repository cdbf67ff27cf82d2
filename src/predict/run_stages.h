// The stages of a prediction in order, each left out where an earlier outcome already holds its result.
#pragma once

#include "asperity/predict/repredictor.h"

namespace asperity {

/// An outcome that is done, to take results from.
struct Kept {
  const Outcome *outcome = nullptr; ///< none: everything is worked out
  bool had_roughness = false;
};

Outcome run_stages(const Job &job, const Program &program, const PredictOptions &options,
                   const Progress &progress, const Kept &kept, StageRuns &runs);

} // namespace asperity
