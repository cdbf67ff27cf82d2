// Charts under the bent cutter, and which part of its path they see.
#include "stages.h"

#include "last_visit.h"

#include "asperity/base/parallel.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

namespace asperity {

bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress) {
  return std::holds_alternative<WallChart>(chart)
             ? sweep_wall(std::get<WallChart>(chart), swept, threads, progress)
             : sweep_floor(std::get<FloorChart>(chart), swept, threads, progress);
}

FeaturePath::FeaturePath(const Job &job, const TimedPath &path, const Feature &feature)
    : pieces_(path.pieces.size()),
      end_(static_cast<double>(pieces_) <= kMostEarlyPieces ? end_of_visits(job, path, feature) : pieces_),
      may_stretch_(!std::holds_alternative<WallFeature>(feature)) {
  // A path of nothing is nobody's; and where hardly anything is left to cut, a copy gains nothing.
  constexpr double kMost = 0.95;
  if (end_ == 0 || static_cast<double>(end_) > kMost * static_cast<double>(pieces_))
    end_ = pieces_;
}

std::size_t FeaturePath::stretches() const {
  return is_early() && may_stretch_ ? band_count(end_, kStretchPieces) : 1;
}

std::size_t FeaturePath::stretch_end(std::size_t stretch) const {
  return stretch + 1 < stretches() ? (stretch + 1) * kStretchPieces : end_;
}

std::shared_ptr<const SweptPath> FeaturePath::stretch(std::size_t stretch, const SweptPath &so_far) const {
  if (stretches() == 1)
    return part_;
  const std::size_t begin = stretch == 0 ? 0 : stretch_end(stretch - 1);
  return std::make_shared<const SweptPath>(
      so_far.stretch(static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(stretch_end(stretch))));
}

bool sweep_feature(Chart &chart, const FeaturePath &path, const SweptPath &whole, int threads,
                   const Progress &progress) {
  if (path.stretches() == 1)
    return sweep_chart(chart, path.of(whole), threads, progress);
  for (std::size_t i = 0; i < path.stretches(); ++i)
    if (!sweep_chart(chart, *path.stretch(i, whole), threads, progress))
      return false;
  return true;
}

bool FeaturePath::settle(const Job &job, const Feature &feature, const SweptPath &whole) {
  if (!is_early())
    return true;
  if (!keeps_away(job, whole, end_, feature)) {
    end_ = pieces_;
    part_.reset();
    return false;
  }
  if (!part_)
    take(whole);
  return true;
}

} // namespace asperity
