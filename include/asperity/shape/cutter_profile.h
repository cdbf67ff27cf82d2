// The cutter's silhouette: flat tip, corner arc, cone, cylinder. Always convex.
#pragma once

namespace asperity {

/// Radius over height above the tip [mm]: flat disc of tip_flat_mm, then an arc of corner_mm tangent to what
/// follows, then a cone leaning cone_half_angle_rad from the axis, up to radius_mm, then a cylinder.
/// Flat: tip_flat = radius, corner 0. Ball: tip_flat 0, corner = radius. Corner-radius: tip_flat = radius -
/// corner. Tapered: ball or corner-radius tip, then cone. V: tip_flat >= 0, corner 0, cone.
class CutterProfile {
public:
  CutterProfile() = default;
  CutterProfile(double radius_mm, double tip_flat_mm, double corner_mm, double cone_half_angle_rad);

  static CutterProfile flat(double radius_mm) { return {radius_mm, radius_mm, 0.0, 0.0}; }
  static CutterProfile ball(double radius_mm) { return {radius_mm, 0.0, radius_mm, 0.0}; }
  static CutterProfile corner_radius(double radius_mm, double corner_mm) {
    return {radius_mm, radius_mm - corner_mm, corner_mm, 0.0};
  }

  double radius_mm() const { return radius_; }
  double tip_flat_mm() const { return tip_flat_; }
  double corner_mm() const { return corner_; }
  double cone_half_angle_rad() const { return cone_; }
  /// Height at which the full radius is reached [mm].
  double shoulder_mm() const { return shoulder_; }
  bool is_flat() const { return tip_flat_ == radius_; }
  bool is_ball() const { return tip_flat_ == 0.0 && corner_ == radius_ && cone_ == 0.0; }

  /// Radius at height h above the tip; h < 0 gives a negative number (nothing there).
  double radius_at(double h_mm) const;
  /// Height of the lower surface at plan distance rho from the axis, 0 <= rho <= radius_mm(); beyond:
  /// +infinity.
  double height_at(double rho_mm) const;
  /// The same cutter grown sideways by d [mm] (runout, diameter error): tip flat and radius move, the rest
  /// stays.
  CutterProfile grown(double d_mm) const;
  bool operator==(const CutterProfile &) const = default;

private:
  double radius_ = 0.0, tip_flat_ = 0.0, corner_ = 0.0, cone_ = 0.0;
  double arc_end_radius_ = 0.0, arc_end_height_ = 0.0, shoulder_ = 0.0;
};

} // namespace asperity
