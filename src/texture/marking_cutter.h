// The teeth of a swept cutter, and their marks at a given feed, worked out once for many points.
#pragma once

#include "asperity/surface/tooth_marks.h"
#include "asperity/texture/wall_texture.h"

#include <map>
#include <tuple>

namespace asperity {

/// Less feed a tooth than this leaves no marks [mm].
inline constexpr double kLeastFeed_mm = 1e-4;

struct MarkingCutter {
  int flutes = 2;
  double helix_rad = 0;
  double eccentricity_mm = 0; ///< half the runout; 0 with that effect off
  CutterProfile nominal;
};
MarkingCutter marking_cutter(const Job &job, std::uint16_t tool);

/// Where a tooth mark is asked for, as far as its shape depends on it.
struct MarkKind {
  std::uint16_t tool = 0;
  double radius_mm = 0;         ///< of the cutter there, without the runout
  double feed_per_tooth_mm = 0; ///< along the wall
  double wall_per_mm = 0;
  bool is_climb = true;
};

/// Cutters by tool and marks by kind. Feed and radius are rounded to 1/8192 of an octave: 0.01 % of a height.
/// Not for several threads.
class MarkStore {
public:
  explicit MarkStore(const Job &job) : job_(job) {}
  const ToothMarks &marks(const MarkKind &kind);
  const MarkingCutter &cutter(std::uint16_t tool);

private:
  using Key = std::tuple<std::uint16_t, long, long, double, bool>;
  const Job &job_;
  std::map<std::uint16_t, MarkingCutter> cutters_;
  std::map<Key, ToothMarks> marks_;
  Key last_key_{};
  const ToothMarks *last_ = nullptr;
};

} // namespace asperity
