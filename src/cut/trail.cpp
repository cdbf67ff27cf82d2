#include "trail.h"

#include "front_crossing.h"

#include <cmath>

namespace asperity {

double least_step_mm(double cutter_radius_mm) {
  constexpr double kDeeper = 4.0;
  return std::sqrt(2.0 * cutter_radius_mm * kDeeper * kSkin_mm);
}

void Trail::carve_first() {
  const Kept &first = strokes_.front();
  stock_.carve(first.from, first.to, first.cutter->profile, first.cutter->flute_length_mm);
  strokes_.pop_front();
}

void Trail::carve_behind(Vec2 place_mm, double step_mm) {
  while (!strokes_.empty() && glm::distance(strokes_.front().place_mm, place_mm) >= step_mm)
    carve_first();
}

void Trail::carve_all() {
  while (!strokes_.empty())
    carve_first();
}

} // namespace asperity
