// All that one prediction says; every output is drawn from it.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/finding/find_all.h"
#include "asperity/finding/measure.h"
#include "asperity/gcode/program.h"
#include "asperity/texture/feature_roughness.h"

#include <functional>
#include <string>
#include <vector>

namespace asperity {

/// A wanted number against the predicted one.
struct WantedCheck {
  std::string feature;
  std::string what;   ///< "diameter", "lip height", "witness depth"
  std::string wanted; ///< in words: "61.95 to 62.05 mm"
  double predicted = 0;
  std::string unit;
  bool met = false;
};

struct FeatureResult {
  std::vector<SizeMeasure> sizes;
  double cut_share = 0;                              ///< of the cells, reached by a pass
  double lowest_um = 0, mean_um = 0, highest_um = 0; ///< residual over cut cells
};

/// Most that a prediction takes; long lists lie on the disk (base/large_array.h).
struct MemoryBound {
  std::size_t in_memory_bytes = 0, on_disk_bytes = 0;
};

enum class Status { done, cancelled, too_large };

struct Outcome {
  Status status = Status::done;
  std::string why; ///< when not done
  Job job;
  Program program; ///< without its moves, which the path holds
  std::size_t program_moves = 0;
  TimedPath path;
  CutRecord cut;
  std::vector<Chart> charts;               ///< one per feature; what goes by high above later is not in it
  std::vector<FeatureResult> features;     ///< one per feature
  std::vector<FeatureRoughness> roughness; ///< one per feature
  std::vector<Finding> findings;
  std::vector<WantedCheck> checks;
  std::vector<std::string> notes; ///< what is model, default, uncalibrated
  MemoryBound memory_bound;       ///< as stated before the cut

  bool all_met() const {
    for (const WantedCheck &check : checks)
      if (!check.met)
        return false;
    return true;
  }
};

struct PredictOptions {
  int threads = 0;                    ///< 0 = all cores
  std::size_t memory_limit_bytes = 0; ///< 0 = what the machine has free
  /// Off: Outcome::roughness holds one unmeasured entry a feature, and wanted Ra is not checked (a note says
  /// so).
  bool roughness = true;
  /// Called on the calling thread as soon as a feature's chart is whole; may be empty.
  std::function<void(std::size_t feature, const Chart &chart)> chart_swept = {};
};

/// Times the path and states what predicting on one thread would take. The program itself is not counted.
MemoryBound memory_bound(const Job &job, const Program &program);

/// The front door: read the program into moves, time them, cut, sweep, measure, find.
Outcome predict(const Job &job, const Program &program, const PredictOptions &options,
                const Progress &progress);

} // namespace asperity
