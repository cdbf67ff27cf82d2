// How a chart is laid out flat.
#include "plane.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double wrapped_into(double x, double length) {
  const double r = std::fmod(x, length);
  return r < 0.0 ? r + length : r;
}

/// Outer edges of cells that stand at these places.
void set_span(const std::vector<double> &places, double &low, double &length) {
  if (places.empty())
    return;
  const std::size_t last = places.size() - 1;
  const double first_gap = last > 0 ? places[1] - places[0] : 1.0;
  const double last_gap = last > 0 ? places[last] - places[last - 1] : 1.0;
  low = places[0] - 0.5 * first_gap;
  length = places[last] + 0.5 * last_gap - low;
}

double seam_far_from(const std::vector<double> &places, double length) {
  constexpr int kTries = 16;
  double best = 0.0, best_gap = -1.0;
  for (int k = 0; k < kTries; ++k) {
    // Half-way round is tried first: most programs begin at s = 0, and so do most marks.
    const double seam = length * wrapped_into(0.5 + static_cast<double>(k) / kTries, 1.0);
    double gap = length;
    for (double place : places) {
      const double d = wrapped_into(place - seam, length);
      gap = std::min(gap, std::min(d, length - d));
    }
    if (gap > best_gap + 0.25 * length / kTries) {
      best = seam;
      best_gap = gap;
    }
  }
  return best;
}

} // namespace

double Plane::x_offset_mm(double place_mm) const {
  if (!wraps)
    return place_mm - x_low_mm;
  return wrapped_into(mirrored ? seam_mm - place_mm : place_mm - seam_mm, width_mm);
}

std::vector<double> column_places(const Chart &chart) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return wall->s_mm;
  const auto &floor = std::get<FloorChart>(chart);
  std::vector<double> places(floor.nx);
  for (std::size_t i = 0; i < floor.nx; ++i)
    places[i] = floor.x_mm(i);
  return places;
}

std::vector<double> row_places(const Chart &chart) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return wall->z_mm;
  const auto &floor = std::get<FloorChart>(chart);
  std::vector<double> places(floor.ny);
  for (std::size_t j = 0; j < floor.ny; ++j)
    places[j] = floor.y_mm(j);
  return places;
}

Plane plane_of(const Chart &chart, const std::vector<double> &places_mm) {
  Plane plane;
  set_span(column_places(chart), plane.x_low_mm, plane.width_mm);
  set_span(row_places(chart), plane.y_low_mm, plane.height_mm);
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    plane.wraps = true;
    plane.mirrored = wall->inside;
    plane.x_low_mm = 0.0;
    plane.width_mm = wall->outline.length_mm();
    plane.seam_mm = seam_far_from(places_mm, plane.width_mm);
  }
  return plane;
}

Vec2 chart_place(const Chart &chart, Vec3 point_mm) {
  const auto *wall = std::get_if<WallChart>(&chart);
  if (!wall || wall->foot.empty())
    return plan(point_mm);
  const auto nearest =
      std::min_element(wall->foot.begin(), wall->foot.end(), [&](const Vec2 &a, const Vec2 &b) {
        return glm::dot(a - plan(point_mm), a - plan(point_mm)) <
               glm::dot(b - plan(point_mm), b - plan(point_mm));
      });
  return {wall->s_mm[static_cast<std::size_t>(nearest - wall->foot.begin())], point_mm.z};
}

} // namespace asperity
