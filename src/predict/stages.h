// The steps that the whole prediction and that of one feature share.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/chart.h"
#include "asperity/cut/walk.h"
#include "asperity/job/job.h"

#include <optional>

namespace asperity {

/// The part of a bent path that a feature's chart is swept under and its marks are read of: nothing of the
/// rest comes near. Whole where that cannot be told or the path is long.
class FeaturePath {
public:
  FeaturePath(const Job &job, const TimedPath &path, const Feature &feature);
  /// Pieces of the timed path; all of them unless the feature is left alone early.
  std::size_t end() const { return end_; }
  bool is_early() const { return end_ < pieces_; }
  /// Takes the part, which is cut already.
  void take(const SweptPath &so_far) { part_ = so_far.up_to(static_cast<std::uint32_t>(end_)); }
  const SweptPath &part() const { return *part_; }
  /// Once all is cut. Takes the part if that was not done; false if the path comes back after all: bent as it
  /// is, it comes nearer than was expected. It is whole then.
  bool settle(const Job &job, const Feature &feature, const SweptPath &whole);
  const SweptPath &of(const SweptPath &whole) const { return part_ ? *part_ : whole; }

private:
  std::size_t pieces_, end_;
  std::optional<SweptPath> part_;
};

/// Sweeps a chart in place; false if cancelled.
bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress);

} // namespace asperity
