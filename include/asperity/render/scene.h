// What of an outcome can be drawn: kinds of path, where the cutter is at a moment, what fills the picture.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/render/camera.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace asperity {

/// plunge: down, steeper than 45 degrees; ramp: down along the way; feed: all other cutting moves.
enum class PathKind : std::uint8_t { feed, rapid, plunge, ramp };

PathKind kind_of(const PathPiece &piece);
std::string_view name_of(PathKind kind);

/// The cutter's tip (unbent) at one moment.
struct TipPlace {
  std::size_t piece = 0; ///< index into TimedPath::pieces
  Vec3 tip_mm{0.0};
  std::uint16_t tool = 0;
};

/// Nothing if the path is empty; before the start and after the end the cutter stands at that end.
std::optional<TipPlace> tip_at(const TimedPath &path, double time_s);

/// Box round the charts' wanted surfaces; round one feature's if `feature` >= 0.
Bounds surface_bounds(const Outcome &outcome, int feature = -1);
/// Points on the charts' wanted surfaces, enough to frame a picture by.
std::vector<Vec3> surface_points(const Outcome &outcome, int feature = -1);
/// The same with blank, hold-down and the cutting moves.
Bounds whole_bounds(const Outcome &outcome);

/// Where a wall is cut open to be shown flat: the arc length [mm] farthest from all its findings.
double seam_mm(const Outcome &outcome, std::size_t feature);
/// Box of a feature shown flat [mm]: a wall's arc length from its seam (0 .. length) and z; a floor's x and
/// y.
struct SheetBox {
  Vec2 low_mm{0.0}, high_mm{0.0};
};
SheetBox strip_box(const Outcome &outcome, std::size_t feature);

/// What a section shows [mm]: a wall's outward distance from the wanted surface and z, at arc length at_mm; a
/// floor's x and height above its base, at y = at_mm.
SheetBox section_box(const Outcome &outcome, std::size_t feature, double at_mm);

/// Sheet coordinates of a point on the feature, as in strip_box.
Vec2 strip_place_mm(const Outcome &outcome, std::size_t feature, Vec3 point_mm);

} // namespace asperity
