// The prediction as far as one feature needs it: the path, what it cuts, and that feature's swept chart.
#pragma once

#include "asperity/predict/outcome.h"

namespace asperity {

struct OneFeature {
  Status status = Status::done;
  std::string why; ///< when not done
  TimedPath path;
  CutRecord cut;
  Chart chart; ///< of the feature asked for, swept
};

/// `feature` indexes job.features. Other features are neither charted nor counted in the memory bound.
OneFeature predict_one_feature(const Job &job, const Program &program, std::size_t feature,
                               const PredictOptions &options, const Progress &progress);

} // namespace asperity
