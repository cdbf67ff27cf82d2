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

/// Charts of both outcomes have the same cells on this feature.
bool charts_match(const Outcome &a, const Outcome &b, std::size_t feature);

} // namespace asperity
