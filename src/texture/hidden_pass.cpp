// Walks along a pass at a distance from the wall.
#include "hidden_pass.h"

#include <algorithm>

namespace asperity {

namespace {

/// At a part of a pass: cheaper than its sweep.
constexpr int kMostLooks = 256;
/// Covers the rounding of curves and of heights kept as floats [mm].
constexpr double kSlack_mm = 1e-5;

/// Follows a curve at a distance from the wall.
class KeepsOff {
public:
  KeepsOff(const Outline &wall, bool inside, const Curve &curve, double distance_mm)
      : wall_(wall), inside_(inside), curve_(curve), distance_mm_(distance_mm),
        length_mm_(curve.length_mm()) {}

  /// Between two shares of the curve, in plan: is it sure?
  bool between(double u0, double u1) {
    if (looks_left_-- <= 0)
      return false;
    const double middle = 0.5 * (u0 + u1), depth_mm = wall_.depth_mm(plan(curve_.point(middle)));
    const double spare_mm = (inside_ ? depth_mm : -depth_mm) - distance_mm_;
    if (spare_mm < 0.0)
      return false;
    return spare_mm >= 0.5 * (u1 - u0) * length_mm_ || (between(u0, middle) && between(middle, u1));
  }

private:
  const Outline &wall_;
  bool inside_;
  const Curve &curve_;
  double distance_mm_, length_mm_;
  int looks_left_ = kMostLooks;
};

} // namespace

bool stays_above(const Pass &pass, const std::vector<SweptCutter> &cutters, const Outline &wall, bool inside,
                 double height_mm) {
  return std::all_of(pass.parts.begin(), pass.parts.end(), [&](const PassPart *part) {
    const double reach_mm = cutters[part->piece.cutter].profile.radius_mm() + largest_bend_mm(part->piece) +
                            std::max(0.0, height_mm);
    return KeepsOff(wall, inside, part->piece.curve, reach_mm + kSlack_mm).between(0.0, 1.0);
  });
}

} // namespace asperity
