// Where things of an outcome lie: the eye that sees a finding well, points of the flat sheet, lines of
// traces.
#pragma once

#include "app_state.h"

namespace asperity {

/// Square on to the finding's surface, from a little above; keeps the kind of eye of `now`.
Camera camera_at_finding(const Outcome &outcome, std::size_t finding, const Camera &now);

/// The point on the wanted surface that lies at this place of the sheet. Inverse of strip_place_mm.
Vec3 point_of_sheet(const Outcome &outcome, std::size_t feature, Vec2 place_mm);

/// A trace through two points of the sheet, along the coordinate in which they lie farther apart. Points that
/// are as good as one ask for the usual six cutoffs across it.
TraceRequest request_between(const Outcome &outcome, std::size_t feature, Vec2 first_mm, Vec2 second_mm);

/// The trace on the wanted surface, part frame, coarse enough to draw.
std::vector<Vec3> line_of_trace(const Outcome &outcome, std::size_t feature, const Trace &trace);

/// Where a feature can be cut through: all round a wall, over the depth of a floor.
struct CutRange {
  double low_mm = 0, high_mm = 0;
};
CutRange cut_range(const Outcome &outcome, std::size_t feature);
/// Through the weightiest finding on the feature, else through its middle.
double first_cut_mm(const Outcome &outcome, std::size_t feature);
/// The cut that goes through a point: its arc length on a wall, its y on a floor.
double cut_place_mm(const Outcome &outcome, std::size_t feature, Vec3 point_mm);

} // namespace asperity
