// Charts under the bent cutter, and which part of its path they see.
#include "stages.h"

#include "last_visit.h"

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
      end_(static_cast<double>(pieces_) <= kMostEarlyPieces ? end_of_visits(job, path, feature) : pieces_) {
  // A path of nothing is nobody's; and where hardly anything is left to cut, a copy gains nothing.
  constexpr double kMost = 0.95;
  if (end_ == 0 || static_cast<double>(end_) > kMost * static_cast<double>(pieces_))
    end_ = pieces_;
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
