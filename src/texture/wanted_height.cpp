// Heights of flat and domed features; fresh charts on them.
#include "wanted_height.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kEdge_mm = 0.1;
constexpr double kOff = std::numeric_limits<double>::quiet_NaN();

double floor_height_mm(const FloorFeature &floor, Vec2 p) {
  const bool on_island = std::any_of(floor.islands.begin(), floor.islands.end(),
                                     [p](const Outline &island) { return island.depth_mm(p) > -kEdge_mm; });
  return floor.outline.depth_mm(p) >= kEdge_mm && !on_island ? floor.z_mm : kOff;
}

double dome_height_mm(const DomeFeature &dome, Vec2 p) {
  if (dome.outline.depth_mm(p) < kEdge_mm)
    return kOff;
  if (dome.surface)
    return dome.surface->top_mm(p).value_or(kOff);
  const double rho = glm::length(p - dome.centre), r = dome.sphere_radius_mm;
  return rho <= dome.rim_radius_mm ? dome.apex_z_mm - (r - std::sqrt(r * r - rho * rho)) : kOff;
}

} // namespace

double wanted_height_mm(const Feature &feature, Vec2 p) {
  if (const auto *floor = std::get_if<FloorFeature>(&feature))
    return floor_height_mm(*floor, p);
  const auto *dome = std::get_if<DomeFeature>(&feature);
  return dome != nullptr ? dome_height_mm(*dome, p) : kOff;
}

double base_height_mm(const Feature &feature) {
  if (const auto *floor = std::get_if<FloorFeature>(&feature))
    return floor->z_mm;
  return std::get<DomeFeature>(feature).apex_z_mm;
}

const Outline &plan_outline(const Feature &feature) {
  if (const auto *floor = std::get_if<FloorFeature>(&feature))
    return floor->outline;
  return std::get<DomeFeature>(feature).outline;
}

FloorChart floor_patch(const Job &job, const Feature &feature, Vec2 low_mm, Vec2 high_mm, double spacing_mm) {
  const double base_mm = base_height_mm(feature);
  FloorChart patch = make_floor_chart(low_mm, high_mm, spacing_mm, base_mm);
  for (std::size_t j = 0; j < patch.ny; ++j)
    for (std::size_t i = 0; i < patch.nx; ++i) {
      const Vec2 p(patch.x_mm(i), patch.y_mm(j));
      const double height = wanted_height_mm(feature, p);
      const auto top = job.blank.top_mm(p);
      patch.wanted_mm[patch.at(i, j)] = static_cast<float>(height - base_mm);
      patch.blank_mm[patch.at(i, j)] =
          top ? static_cast<float>(*top - height) : -std::numeric_limits<float>::infinity();
    }
  return patch;
}

WallChart wall_strip(const Job &job, const WallFeature &wall, std::vector<double> s_mm,
                     std::vector<double> z_mm) {
  WallChart strip =
      make_wall_chart(wall.outline, wall.side == Side::inside, std::move(s_mm), std::move(z_mm));
  for (std::size_t j = 0; j < strip.rows(); ++j)
    for (std::size_t i = 0; i < strip.columns(); ++i)
      strip.blank_mm[strip.at(i, j)] = static_cast<float>(
          job.blank.wall_stock_mm(strip.foot[i], strip.normal[i], strip.z_mm[j], strip.band_mm));
  return strip;
}

} // namespace asperity
