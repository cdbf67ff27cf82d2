// Predicts again after a change, and works out anew only what the change touches.
#pragma once

#include "asperity/predict/outcome.h"

#include <memory>

namespace asperity {

/// How often each stage ran in one prediction; charts and roughness count features.
struct StageRuns {
  int cut = 0, charts_made = 0, charts_swept = 0, sizes = 0, roughness = 0, findings = 0;
};

/// Holds on to the last outcome. Every number of predict() comes out the same, bit for bit. Not for several
/// threads at once.
class Repredictor {
public:
  /// Cancelled or too large: returned as it is; the outcome before stays the one compared with.
  std::shared_ptr<const Outcome> predict(const Job &job, const Program &program,
                                         const PredictOptions &options, const Progress &progress);
  /// Of the last call.
  const StageRuns &runs() const { return runs_; }

private:
  std::shared_ptr<const Outcome> last_;
  bool last_had_roughness_ = false;
  StageRuns runs_;
};

} // namespace asperity
