// The marks single teeth leave on a wall: which teeth, how far apart, how high, and the wall's height
// anywhere.
#pragma once

#include <vector>

namespace asperity {

/// Radii of n teeth about the spindle axis when the cutter's axis lies e beside it, in the order the teeth
/// pass: R + e cos(2 pi i / n + b), b = angle of tooth 0 from the direction of the offset.
std::vector<double> tooth_radii_mm(double radius_mm, int flutes, double eccentricity_mm,
                                   double angle_rad = 0);

struct ToothPass {
  double radius_mm = 0;
  int flutes = 2;
  double feed_per_tooth_mm = 0; ///< along the wall
  double eccentricity_mm = 0;   ///< half the runout's total indicator reading
  double angle_rad = 0;         ///< of tooth 0 from the direction of the offset
  double helix_rad = 0;         ///< right-hand, up-cut positive: the edge higher up passes later
  bool is_climb = true;
  double wall_per_mm = 0; ///< 1 / wall radius: positive outside a disc, negative in a bore, 0 straight
};

/// Each tooth leaves a hollow of its trochoid's shape, centred where the axis stood when it passed the wall.
/// Height [mm] is above the deepest hollow: 0 at the bottom of the longest tooth's mark.
class ToothMarks {
public:
  explicit ToothMarks(const ToothPass &pass);

  /// At arc position s along the feed and height z above the tip. Tooth 0 marks s = 0 at z = 0.
  double height_mm(double s_mm, double z_mm) const;
  /// The same where feed changes along the wall: spindle turns since tooth 0 stood at the wall, at the moment
  /// the axis stands abreast of the point. Keeps the marks in step whatever the local feed.
  double height_at_turn_mm(double turns, double z_mm) const;

  /// Teeth that leave a mark at all, of `flutes`.
  int marking_teeth() const { return static_cast<int>(marks_.size()); }
  /// Mean distance between marks [mm].
  double pitch_mm() const;
  /// Highest ridge between marks [mm]: Rt of the texture.
  double cusp_mm() const;

private:
  struct Mark {
    double place_mm, lag_mm;         ///< centre of the hollow; how much shorter the tooth is than the longest
    double begin_mm = 0, end_mm = 0; ///< stretch it forms, in its own period
  };
  double rise_mm(double aside_mm) const;
  double height_at_place_mm(double place_mm) const;
  void keep_visible(const std::vector<Mark> &all);

  double radius_, path_radius_, curvature_, wall_, period_, turns_per_mm_;
  std::vector<Mark> marks_;
};

/// One point of a wall cut under `pass`; build ToothMarks once for many points.
double wall_texture_mm(const ToothPass &pass, double s_mm, double z_mm);

} // namespace asperity
