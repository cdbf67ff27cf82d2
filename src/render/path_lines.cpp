// The path as straight stretches.
#include "path_lines.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kArcStep_rad = rad_from_deg(4.0);

std::array<float, 3> floats(Vec3 p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

} // namespace

std::vector<LineStretch> path_stretches(const TimedPath &path, PathKind kind) {
  std::vector<LineStretch> all;
  double along = 0.0;
  for (std::size_t k = 0; k < path.pieces.size(); ++k) {
    const PathPiece &piece = path.pieces[k];
    if (piece.kind == MoveKind::dwell || kind_of(piece) != kind)
      continue;
    if (k == 0 || kind_of(path.pieces[k - 1]) != kind)
      along = 0.0;
    const int steps =
        piece.curve.is_line()
            ? 1
            : std::max(1, static_cast<int>(std::ceil(std::abs(piece.curve.sweep_rad) / kArcStep_rad)));
    for (int s = 0; s < steps; ++s) {
      const double u0 = static_cast<double>(s) / steps, u1 = static_cast<double>(s + 1) / steps;
      const double from = u0 * piece.length_mm;
      all.push_back({.begin = floats(piece.curve.point(u0)),
                     .end = floats(piece.curve.point(u1)),
                     .along_mm = static_cast<float>(along + from),
                     .time_s = static_cast<float>(piece.start_s + piece.time_at(from)),
                     .piece = static_cast<float>(k)});
    }
    along += piece.length_mm;
  }
  return all;
}

Vec2 dash_of(PathKind kind) {
  switch (kind) {
  case PathKind::rapid:
    return {1.6, 1.6};
  case PathKind::plunge:
    return {0.7, 0.5};
  case PathKind::ramp:
    return {3.0, 0.7};
  case PathKind::feed:
    break;
  }
  return Vec2(0.0);
}

} // namespace asperity
