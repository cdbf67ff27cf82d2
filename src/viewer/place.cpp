// Where things of an outcome lie.
#include "place.h"

#include "asperity/render/scene.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kSlope_rad = 0.35;      ///< the eye stands this much above square on
constexpr double kFloorSlope_rad = 0.95; ///< and so steep over a floor
constexpr double kUsualTrace_mm = 4.8;   ///< six sections of the usual cutoff
constexpr double kSamePoint_mm = 0.05;
constexpr std::size_t kDrawnPoints = 400;

const WallChart *wall_of(const Outcome &outcome, std::size_t feature) {
  return std::get_if<WallChart>(&outcome.charts[feature]);
}

double wrapped(double s, double length) {
  const double rest = std::fmod(s, length);
  return rest < 0.0 ? rest + length : rest;
}

/// Arc length of a place across the sheet.
double s_of_sheet(const Outcome &outcome, std::size_t feature, double across_mm) {
  const WallChart &wall = *wall_of(outcome, feature);
  const double length = wall.outline.length_mm();
  const double from_seam = wall.inside ? length - across_mm : across_mm;
  return wrapped(seam_mm(outcome, feature) + from_seam, length);
}

double height_over(const FloorChart &floor, Vec2 p) {
  const auto cell = [&](double at, double origin, std::size_t count) {
    const double k = std::clamp((at - origin) / floor.spacing_mm, 0.0, static_cast<double>(count - 1));
    return static_cast<std::size_t>(std::lround(k));
  };
  if (floor.nx == 0 || floor.ny == 0)
    return floor.base_mm;
  const float wanted = floor.wanted_mm[floor.at(cell(p.x, floor.origin_mm.x, floor.nx),
                                                cell(p.y, floor.origin_mm.y, floor.ny))];
  return floor.base_mm + (wanted == wanted ? static_cast<double>(wanted) : 0.0);
}

} // namespace

Camera camera_at_finding(const Outcome &outcome, std::size_t finding, const Camera &now) {
  const Finding &found = outcome.findings[finding];
  const auto feature = static_cast<std::size_t>(found.feature);
  Camera camera = now;
  camera.target_mm = found.place_mm;
  const Bounds bounds = surface_bounds(outcome, found.feature);
  camera.height_mm = std::max(0.55 * bounds.radius_mm(), 1.0);
  camera.elevation_rad = kFloorSlope_rad;
  if (const WallChart *wall = wall_of(outcome, feature)) {
    const Vec2 place = strip_place_mm(outcome, feature, found.place_mm);
    const double s = s_of_sheet(outcome, feature, place.x);
    const Vec2 outward = wall->inside ? -wall->outline.outward_normal(s) : wall->outline.outward_normal(s);
    camera.azimuth_rad = std::atan2(outward.y, outward.x);
    camera.elevation_rad = wall->inside ? kFloorSlope_rad : kSlope_rad;
    camera.height_mm = std::max(2.2 * (bounds.high.z - bounds.low.z), 1.0);
    camera.target_mm.z = bounds.middle().z;
  }
  return camera;
}

Vec3 point_of_sheet(const Outcome &outcome, std::size_t feature, Vec2 place_mm) {
  if (const WallChart *wall = wall_of(outcome, feature))
    return {wall->outline.point(s_of_sheet(outcome, feature, place_mm.x)), place_mm.y};
  return {place_mm, height_over(std::get<FloorChart>(outcome.charts[feature]), place_mm)};
}

TraceRequest request_between(const Outcome &outcome, std::size_t feature, Vec2 first_mm, Vec2 second_mm) {
  const WallChart *wall = wall_of(outcome, feature);
  const Vec2 apart = second_mm - first_mm;
  const bool is_across = std::abs(apart.x) >= std::abs(apart.y);
  TraceRequest request;
  request.along = is_across ? (wall ? "s" : "x") : (wall ? "z" : "y");
  double low = is_across ? std::min(first_mm.x, second_mm.x) : std::min(first_mm.y, second_mm.y);
  double length = std::max(std::abs(apart.x), std::abs(apart.y));
  if (length < kSamePoint_mm) {
    length = kUsualTrace_mm;
    low -= 0.5 * length;
  }
  request.length_mm = length;
  request.from_mm = low;
  request.at_mm = 0.5 * (is_across ? first_mm.y + second_mm.y : first_mm.x + second_mm.x);
  if (!wall)
    return request;
  // An inside wall runs the other way on the sheet: the stretch begins at its far end.
  if (is_across)
    request.from_mm = s_of_sheet(outcome, feature, wall->inside ? low + length : low);
  else
    request.at_mm = s_of_sheet(outcome, feature, request.at_mm);
  return request;
}

std::vector<Vec3> line_of_trace(const Outcome &outcome, std::size_t feature, const Trace &trace) {
  const std::size_t count = trace.profile_mm.size();
  std::vector<Vec3> line;
  const WallChart *wall = wall_of(outcome, feature);
  const std::size_t stride = std::max<std::size_t>(1, count / kDrawnPoints);
  for (std::size_t i = 0; i < count; i += stride) {
    const double along = trace.begin_mm + trace.spacing_mm * static_cast<double>(i);
    if (trace.along == "s" && wall)
      line.push_back({wall->outline.point(along), trace.at_mm});
    else if (trace.along == "z" && wall)
      line.push_back({wall->outline.point(trace.at_mm), along});
    else if (!wall) {
      const Vec2 p = trace.along == "x" ? Vec2(along, trace.at_mm) : Vec2(trace.at_mm, along);
      line.push_back({p, height_over(std::get<FloorChart>(outcome.charts[feature]), p)});
    }
  }
  return line;
}

CutRange cut_range(const Outcome &outcome, std::size_t feature) {
  if (const WallChart *wall = wall_of(outcome, feature))
    return {0.0, wall->outline.length_mm()};
  const SheetBox box = strip_box(outcome, feature);
  return {box.low_mm.y, box.high_mm.y};
}

double cut_place_mm(const Outcome &outcome, std::size_t feature, Vec3 point_mm) {
  return wall_of(outcome, feature)
             ? s_of_sheet(outcome, feature, strip_place_mm(outcome, feature, point_mm).x)
             : point_mm.y;
}

double first_cut_mm(const Outcome &outcome, std::size_t feature) {
  for (const Finding &finding : outcome.findings)
    if (finding.feature == static_cast<int>(feature))
      return cut_place_mm(outcome, feature, finding.place_mm);
  const CutRange range = cut_range(outcome, feature);
  return 0.5 * (range.low_mm + range.high_mm);
}

} // namespace asperity
