// What of an outcome can be drawn, and where it lies.
#include "asperity/render/scene.h"

#include "surface_grid.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kSteep = 1.0; ///< tangent of 45 degrees

double wrapped(double x, double length) {
  const double r = std::fmod(x, length);
  return r < 0.0 ? r + length : r;
}

std::size_t nearest_column(const WallChart &wall, Vec2 p) {
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < wall.columns(); ++i) {
    const Vec2 off = wall.foot[i] - p;
    if (glm::dot(off, off) < least) {
      least = glm::dot(off, off);
      best = i;
    }
  }
  return best;
}

void add_points(std::vector<Vec3> &points, const Chart &chart) {
  constexpr std::size_t kAcross = 200, kUp = 50;
  const SurfaceGrid grid(chart, 0.0);
  const std::size_t di = std::max<std::size_t>(1, grid.across() / kAcross);
  const std::size_t dj = std::max<std::size_t>(1, grid.up() / kUp);
  for (std::size_t j = 0; j < grid.up(); j = j + 1 == grid.up() ? j + 1 : std::min(j + dj, grid.up() - 1))
    for (std::size_t i = 0; i < grid.across(); i += di)
      if (grid.kind(i, j) != SurfaceKind::absent)
        points.push_back(grid.place(i, j));
}

void hold_chart(Bounds &bounds, const Chart &chart) {
  const SurfaceGrid grid(chart, 0.0);
  const bool is_wall = std::holds_alternative<WallChart>(chart);
  for (std::size_t j = 0; j < grid.up(); ++j) {
    if (is_wall && j != 0 && j + 1 != grid.up())
      continue;
    for (std::size_t i = 0; i < grid.across(); ++i)
      if (is_wall || grid.kind(i, j) != SurfaceKind::absent)
        bounds.hold(grid.place(i, j));
  }
}

} // namespace

PathKind kind_of(const PathPiece &piece) {
  if (piece.kind == MoveKind::rapid)
    return PathKind::rapid;
  const Vec3 way = piece.curve.end - piece.curve.begin;
  const double drop = -way.z;
  if (drop <= 1e-9)
    return PathKind::feed;
  // A helix may end above where it began in plan: its run counts along the curve.
  const double length = piece.length_mm;
  const double run = std::sqrt(std::max(length * length - drop * drop, 0.0));
  return drop > kSteep * run ? PathKind::plunge : PathKind::ramp;
}

std::string_view name_of(PathKind kind) {
  constexpr std::string_view kNames[] = {"feed", "rapid", "plunge", "ramp"};
  return kNames[static_cast<std::size_t>(kind)];
}

std::optional<TipPlace> tip_at(const TimedPath &path, double time_s) {
  if (path.pieces.empty())
    return std::nullopt;
  const auto after = std::upper_bound(path.pieces.begin(), path.pieces.end(), time_s,
                                      [](double t, const PathPiece &p) { return t < p.start_s; });
  const auto at = after == path.pieces.begin() ? after : after - 1;
  const PathPiece &piece = *at;
  const double within = std::clamp(time_s - piece.start_s, 0.0, piece.duration_s);
  // time_at rises along the piece: halve until the place is known to well below a micrometre.
  double low = 0.0, high = piece.length_mm;
  for (int k = 0; k < 60 && high - low > 1e-7; ++k) {
    const double middle = 0.5 * (low + high);
    (piece.time_at(middle) < within ? low : high) = middle;
  }
  const double u = piece.length_mm > 0.0 ? 0.5 * (low + high) / piece.length_mm : 0.0;
  return TipPlace{static_cast<std::size_t>(at - path.pieces.begin()), piece.curve.point(u), piece.tool};
}

Bounds surface_bounds(const Outcome &outcome, int feature) {
  Bounds bounds;
  for (std::size_t i = 0; i < outcome.charts.size(); ++i)
    if (feature < 0 || static_cast<std::size_t>(feature) == i)
      hold_chart(bounds, outcome.charts[i]);
  return bounds;
}

std::vector<Vec3> surface_points(const Outcome &outcome, int feature) {
  std::vector<Vec3> points;
  for (std::size_t i = 0; i < outcome.charts.size(); ++i)
    if (feature < 0 || static_cast<std::size_t>(feature) == i)
      add_points(points, outcome.charts[i]);
  return points;
}

Bounds whole_bounds(const Outcome &outcome) {
  Bounds bounds = surface_bounds(outcome);
  const Blank &blank = outcome.job.blank;
  bounds.hold({blank.low_mm(), blank.z_bottom_mm});
  bounds.hold({blank.high_mm(), blank.z_top_mm});
  for (const KeepOut &keep_out : outcome.job.holding.keep_outs) {
    const Vec2 half = 0.5 * (keep_out.is_round ? Vec2(keep_out.diameter_mm) : keep_out.size_mm);
    bounds.hold({keep_out.centre - half, keep_out.z_top_mm});
    bounds.hold({keep_out.centre + half, keep_out.z_top_mm});
  }
  for (const PathPiece &piece : outcome.path.pieces)
    if (piece.kind == MoveKind::feed) {
      bounds.hold(piece.curve.begin);
      bounds.hold(piece.curve.point(0.5));
      bounds.hold(piece.curve.end);
    }
  return bounds;
}

double seam_mm(const Outcome &outcome, std::size_t feature) {
  const auto *wall = std::get_if<WallChart>(&outcome.charts[feature]);
  if (!wall || wall->columns() == 0)
    return 0.0;
  const double length = wall->outline.length_mm();
  std::vector<double> places;
  for (const Finding &finding : outcome.findings)
    if (finding.feature == static_cast<int>(feature))
      places.push_back(wall->s_mm[nearest_column(*wall, plan(finding.place_mm))]);
  if (places.empty())
    return 0.5 * length; // most programs begin at s = 0
  std::sort(places.begin(), places.end());
  double seam = 0.0, widest = -1.0;
  for (std::size_t k = 0; k < places.size(); ++k) {
    const double next = k + 1 < places.size() ? places[k + 1] : places.front() + length;
    if (next - places[k] > widest) {
      widest = next - places[k];
      seam = wrapped(0.5 * (places[k] + next), length);
    }
  }
  return seam;
}

SheetBox strip_box(const Outcome &outcome, std::size_t feature) {
  const Chart &chart = outcome.charts[feature];
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return wall->rows() == 0
               ? SheetBox{}
               : SheetBox{{0.0, wall->z_mm.front()}, {wall->outline.length_mm(), wall->z_mm.back()}};
  const auto &floor = std::get<FloorChart>(chart);
  const Vec2 half(0.5 * floor.spacing_mm);
  const Vec2 extent(static_cast<double>(floor.nx) * floor.spacing_mm,
                    static_cast<double>(floor.ny) * floor.spacing_mm);
  return {floor.origin_mm - half, floor.origin_mm - half + extent};
}

Vec2 strip_place_mm(const Outcome &outcome, std::size_t feature, Vec3 point_mm) {
  const auto *wall = std::get_if<WallChart>(&outcome.charts[feature]);
  if (!wall || wall->columns() == 0)
    return plan(point_mm);
  const double length = wall->outline.length_mm();
  const double u =
      wrapped(wall->s_mm[nearest_column(*wall, plan(point_mm))] - seam_mm(outcome, feature), length);
  return {wall->inside ? length - u : u, point_mm.z};
}

} // namespace asperity
