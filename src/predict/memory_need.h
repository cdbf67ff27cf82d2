// How much memory and disk a prediction takes, stage by stage, known before it begins.
#pragma once

#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"
#include "asperity/predict/outcome.h"

#include <cstddef>
#include <span>
#include <string>

namespace asperity {

/// What lists take [bytes]: long ones lie on the disk (large_array.h).
struct Bytes {
  double in_memory = 0, on_disk = 0;

  static Bytes of_list(double bytes);
  Bytes &operator+=(const Bytes &more);
  MemoryBound rounded() const;
};
Bytes operator+(Bytes a, const Bytes &b);

/// Upper bounds of what a stage holds while it runs, and of what stays; the program is the caller's.
struct MemoryNeed {
  Bytes path;
  Bytes record;       ///< samples of the cut and the bent path
  double stock = 0;   ///< only while the path is cut
  Bytes charts;       ///< of all features
  double sweep = 0;   ///< strokes of the feature that takes most, while it is swept
  double reading = 0; ///< roughness of all features, sizes and findings side by side
  Bytes early;        ///< the paths of features that are swept before the whole is cut

  /// Most that is held at once. Where there is room for both, charts are made beside the cut, and those that
  /// the rest of the path leaves alone swept and read.
  Bytes most(bool beside_cut) const;
};

MemoryNeed memory_need(const Job &job, const TimedPath &path, std::span<const Feature> features);

/// Whether there is room for a prediction, asked before the cut and again when its record is known.
class MemoryCheck {
public:
  /// `kept`: an outcome that results are taken from, or null.
  MemoryCheck(const MemoryNeed &need, const Outcome *kept, const PredictOptions &options);

  /// Are there threads and room for charts beside the cut?
  bool beside_cut() const { return beside_cut_; }
  /// What is kept included.
  const Bytes &bound() const { return bound_; }
  /// Empty if there is room, else what is wrong and what to do.
  std::string fault() const { return fault_of(bound_, kept_); }
  /// The same once the path is cut, which may have left more than was expected of it.
  std::string fault_after(const CutRecord &record);

private:
  std::string fault_of(const Bytes &need, const Bytes &taken) const;

  MemoryNeed need_;
  std::size_t limit_bytes_;
  Bytes kept_, bound_;
  bool beside_cut_ = false;
};

} // namespace asperity
