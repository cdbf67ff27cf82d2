// How much memory a prediction takes, stage by stage, known before it begins.
#pragma once

#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"
#include "asperity/predict/outcome.h"

#include <cstddef>
#include <span>
#include <string>

namespace asperity {

/// Upper bounds [bytes] of what a stage holds while it runs, and of what stays; the program is the caller's.
struct MemoryNeed {
  double path = 0;
  double record = 0;  ///< samples of the cut and the bent path
  double stock = 0;   ///< only while the path is cut
  double charts = 0;  ///< of all features
  double sweep = 0;   ///< strokes of the feature that takes most, while it is swept
  double reading = 0; ///< roughness of all features, sizes and findings side by side

  /// Most that is held at once. Charts are made beside the cut where there is room for both.
  double most_bytes(bool charts_beside_cut) const;
};

MemoryNeed memory_need(const Job &job, const TimedPath &path, std::span<const Feature> features);

/// What an outcome holds that is kept to take results from.
double held_bytes(const Outcome &outcome);

/// Empty if that much can be had, else what is wrong and what to do. limit_bytes 0 = what the machine has
/// free; `held_bytes`, part of the need, are taken already.
std::string memory_fault(double need_bytes, double held_bytes, std::size_t limit_bytes);

} // namespace asperity
