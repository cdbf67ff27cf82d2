// Walking along a closed path: stretches forwards and backwards, and places on it.
#pragma once

#include "asperity/shape/outline.h"

#include <vector>

namespace asperity {

/// The stretch of `path` from arc length from_mm over by_mm (negative: backwards), round more than once if
/// need be. Arcs of one circle that follow each other become one, up to a full circle.
std::vector<OutlineElement> stretch_of(const Outline &path, double from_mm, double by_mm);

/// Arc length where the ray from `centre` at the angle [deg, from +x] leaves the path for the last time; a
/// ray that misses it gives the place nearest to the ray's far end.
double place_at_angle_mm(const Outline &path, Vec2 centre, double deg);

/// Arc length of the place nearest to p.
double place_nearest_mm(const Outline &path, Vec2 p);

/// value brought into [0, length).
double wrapped(double value, double length);

} // namespace asperity
