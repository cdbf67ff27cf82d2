// Heights of tooth marks on a floor.
#include "asperity/surface/floor_marks.h"

#include "asperity/base/wide_vectors.h"
#include "asperity/surface/kinematic.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Hollows of the corner's radius, the nearest counts.
ASPERITY_INTO_WIDE double hollow_mm(const EndFloor &floor, double place_mm) {
  const double off_mm = place_mm - floor.pitch_mm * std::nearbyint(place_mm / floor.pitch_mm);
  return arc_cusp_mm(floor.corner_mm, 2.0 * off_mm);
}

/// The next mark lies ahead; from its corner the edge rises backwards, to the centre.
ASPERITY_INTO_WIDE double saw_mm(const EndFloor &floor, double place_mm) {
  return (floor.pitch_mm * std::ceil(place_mm / floor.pitch_mm) - place_mm) * floor.dish_slope;
}

} // namespace

double ball_floor_texture_mm(const BallFloor &floor, double along_mm, double across_mm) {
  // The nearest dent lies in the nearest row or in a row beside it.
  const double row = std::round(across_mm / floor.stepover_mm);
  double nearest = HUGE_VAL;
  for (const double j : {row - 1.0, row, row + 1.0}) {
    const double shift = std::fmod(std::abs(j), 2.0) == 1.0 ? floor.stagger * floor.pitch_mm : 0.0;
    const double x = std::remainder(along_mm - shift, floor.pitch_mm);
    const double y = across_mm - j * floor.stepover_mm;
    nearest = std::min(nearest, x * x + y * y);
  }
  return arc_cusp_mm(floor.radius_mm, 2.0 * std::sqrt(nearest));
}

double end_floor_texture_mm(const EndFloor &floor, double along_mm, double across_mm) {
  const double circle = floor.radius_mm - floor.corner_mm;
  if (floor.pitch_mm <= 0 || std::abs(across_mm) >= circle)
    return 0.0;
  // Aside of the middle the leading half of the circle lags behind its foremost point.
  const double lag = across_mm == 0 ? 0.0 : arc_cusp_mm(circle, 2.0 * across_mm);
  return floor.corner_mm > 0 ? hollow_mm(floor, along_mm + lag) : saw_mm(floor, along_mm + lag);
}

ASPERITY_WIDE void end_floor_middles_mm(const EndFloor &floor, const Eight &along_mm, Eight &height_mm) {
  const EndFloor law = floor; // nothing else writes to it
  if (law.pitch_mm <= 0 || law.radius_mm <= law.corner_mm)
    height_mm.fill(0.0);
  else if (law.corner_mm > 0)
    for (std::size_t i = 0; i < kEight; ++i)
      height_mm[i] = hollow_mm(law, along_mm[i]);
  else
    for (std::size_t i = 0; i < kEight; ++i)
      height_mm[i] = saw_mm(law, along_mm[i]);
}

} // namespace asperity
