// How a chart is laid out flat: where a wall is cut open, which way it runs, what lies at which offset.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/finding/find_all.h"

#include <vector>

namespace asperity {

/// Offsets count in mm from the left edge and from the lower edge of the flat picture.
struct Plane {
  double x_low_mm = 0, width_mm = 0;
  double y_low_mm = 0, height_mm = 0;
  bool wraps = false;    ///< a wall: the right edge joins the left
  bool mirrored = false; ///< an inside wall, seen from within: s runs to the left
  double seam_mm = 0;    ///< arc length at which a wall is cut open

  double x_offset_mm(double place_mm) const;
  double y_offset_mm(double place_mm) const { return place_mm - y_low_mm; }
};

/// A wall is cut open where it is farthest from every finding in `places` (arc lengths), so that none is
/// split.
Plane plane_of(const Chart &chart, const std::vector<double> &places_mm);

/// Chart coordinates of a point: (s, z) of the nearest column of a wall, (x, y) of a floor.
Vec2 chart_place(const Chart &chart, Vec3 point_mm);

std::vector<double> column_places(const Chart &chart);
std::vector<double> row_places(const Chart &chart);

} // namespace asperity
