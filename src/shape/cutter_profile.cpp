// The lower surface of a cutter: flat, corner arc, cone, cylinder, each tangent to or leaning out from the
// last.
#include "asperity/shape/cutter_profile.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace asperity {

CutterProfile::CutterProfile(double radius_mm, double tip_flat_mm, double corner_mm,
                             double cone_half_angle_rad)
    : radius_(radius_mm), tip_flat_(tip_flat_mm), corner_(corner_mm), cone_(cone_half_angle_rad) {
  assert(radius_ > 0.0 && tip_flat_ <= radius_ && corner_ >= 0.0 && cone_ >= 0.0);
  if (cone_ == 0.0) {
    // A straight cutter's arc ends upright exactly at the full radius, whatever rounding says.
    assert(std::abs(tip_flat_ + corner_ - radius_) <= 1e-9 * (radius_ + std::abs(tip_flat_)));
    arc_end_radius_ = radius_;
    arc_end_height_ = shoulder_ = corner_;
    return;
  }
  // The arc ends where its slope has reached that of the cone: cot(half angle).
  arc_end_radius_ = tip_flat_ + corner_ * std::cos(cone_);
  arc_end_height_ = corner_ * (1.0 - std::sin(cone_));
  if (arc_end_radius_ >= radius_) {
    arc_end_radius_ = radius_;
    const double d = std::min(radius_ - tip_flat_, corner_);
    arc_end_height_ = corner_ - std::sqrt((corner_ - d) * (corner_ + d));
  }
  shoulder_ = arc_end_height_ + (radius_ - arc_end_radius_) / std::tan(cone_);
}

double CutterProfile::radius_at(double h_mm) const {
  if (h_mm < 0.0)
    return -1.0;
  if (h_mm >= shoulder_)
    return radius_;
  if (h_mm <= arc_end_height_)
    return tip_flat_ + std::sqrt(std::max(0.0, h_mm * (2.0 * corner_ - h_mm)));
  return arc_end_radius_ + (h_mm - arc_end_height_) * std::tan(cone_);
}

double CutterProfile::height_at(double rho_mm) const {
  if (rho_mm <= tip_flat_)
    return 0.0;
  if (rho_mm > radius_)
    return std::numeric_limits<double>::infinity();
  if (rho_mm > arc_end_radius_)
    return arc_end_height_ + (rho_mm - arc_end_radius_) / std::tan(cone_);
  // d^2 / (r + sqrt(r^2 - d^2)) is r - sqrt(r^2 - d^2) without its cancellation near the tip.
  const double d = std::min(rho_mm - tip_flat_, corner_);
  return d * d / (corner_ + std::sqrt((corner_ - d) * (corner_ + d)));
}

CutterProfile CutterProfile::grown(double d_mm) const {
  return {radius_ + d_mm, tip_flat_ + d_mm, corner_, cone_};
}

} // namespace asperity
