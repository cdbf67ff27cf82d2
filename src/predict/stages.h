// The steps that the whole prediction and that of one feature share.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/chart.h"
#include "asperity/cut/walk.h"
#include "asperity/job/job.h"

#include <memory>

namespace asperity {

/// The part of a bent path that a feature's chart is swept under and its marks are read of: nothing of the
/// rest comes near. Whole where that cannot be told or the path is long. A long part is swept in stretches,
/// so that the first can be while the next is being cut; not under walls, where what comes last hides most
/// of what came before.
class FeaturePath {
public:
  FeaturePath(const Job &job, const TimedPath &path, const Feature &feature);
  /// Pieces of the timed path; all of them unless the feature is left alone early.
  std::size_t end() const { return end_; }
  bool is_early() const { return end_ < pieces_; }
  std::size_t stretches() const;
  /// One past the stretch's last piece of the timed path.
  std::size_t stretch_end(std::size_t stretch) const;
  /// Of the path as far as it is cut; where there is only one it is the part, which must be taken.
  std::shared_ptr<const SweptPath> stretch(std::size_t stretch, const SweptPath &so_far) const;
  /// Takes the part, which is cut already.
  void take(const SweptPath &so_far) {
    part_ = std::make_shared<const SweptPath>(so_far.up_to(static_cast<std::uint32_t>(end_)));
  }
  /// Once all is cut. Takes the part if that was not done; false if the path comes back after all: bent as it
  /// is, it comes nearer than was expected. It is whole then.
  bool settle(const Job &job, const Feature &feature, const SweptPath &whole);
  const SweptPath &of(const SweptPath &whole) const { return part_ ? *part_ : whole; }

private:
  std::size_t pieces_, end_;
  bool may_stretch_;
  std::shared_ptr<const SweptPath> part_;
};

/// Pieces of the timed path to a stretch.
inline constexpr std::size_t kStretchPieces = 8192;

/// Sweeps a feature's chart in place under its part of the whole path, stretch by stretch; false if
/// cancelled.
bool sweep_feature(Chart &chart, const FeaturePath &path, const SweptPath &whole, int threads,
                   const Progress &progress);

/// Sweeps a chart in place; false if cancelled.
bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress);

} // namespace asperity
