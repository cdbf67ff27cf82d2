// Walks along a pass at a distance from the wall.
#include "hidden_pass.h"

#include "asperity/shape/keeps_clear.h"

#include <algorithm>

namespace asperity {

namespace {

/// At a part of a pass: cheaper than its sweep.
constexpr int kMostLooks = 256;
/// Covers the rounding of curves and of heights kept as floats [mm].
constexpr double kSlack_mm = 1e-5;

} // namespace

bool stays_above(const Pass &pass, const std::vector<SweptCutter> &cutters, const Outline &wall, bool inside,
                 double height_mm) {
  return std::all_of(pass.parts.begin(), pass.parts.end(), [&](const PassPart *part) {
    const double reach_mm = cutters[part->piece.cutter].profile.radius_mm() + largest_bend_mm(part->piece) +
                            std::max(0.0, height_mm) + kSlack_mm;
    const auto spare_mm = [&](Vec2 p) {
      const double depth_mm = wall.depth_mm(p);
      return (inside ? depth_mm : -depth_mm) - reach_mm;
    };
    int looks_left = kMostLooks;
    return keeps_clear(part->piece.curve, spare_mm, looks_left);
  });
}

} // namespace asperity
