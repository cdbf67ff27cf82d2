// The marks teeth leave on a floor: height above their deepest point, along the feed and across it.
#pragma once

#include "asperity/base/eight.h"

namespace asperity {

/// Ball: spherical dents `pitch` apart along the feed in rows `stepover` apart, every other row shifted by
/// `stagger` of a pitch. Origin: the middle of a dent.
struct BallFloor {
  double radius_mm = 0;
  double pitch_mm = 0; ///< feed per tooth, or per revolution when one tooth is longest
  double stepover_mm = 0;
  double stagger = 0; ///< 0..1
};
double ball_floor_texture_mm(const BallFloor &floor, double along_mm, double across_mm);

/// Flat or corner-radius cutter: the leading half of the lowest point's circle leaves arcs `pitch` apart.
/// Corner 0: sharp corner, end teeth rising to the centre by the dish angle. Else hollows of the corner's
/// radius.
struct EndFloor {
  double radius_mm = 0, corner_mm = 0;
  double dish_slope = 0; ///< tangent of the dish angle
  double pitch_mm = 0;
};
/// along: from the foremost point of one arc, positive along the feed; across: from the pass's middle. 0
/// beyond the circle that marks (radius - corner). The trailing half is taken not to cut again, as on a
/// machine leaned a little in the feed's direction.
double end_floor_texture_mm(const EndFloor &floor, double along_mm, double across_mm);
/// The same on the pass's middle, at eight places.
void end_floor_middles_mm(const EndFloor &floor, const Eight &along_mm, Eight &height_mm);

} // namespace asperity
