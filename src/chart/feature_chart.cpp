// Asks the blank and the feature for every cell; threads share rows of floors and columns of walls.
#include "asperity/chart/feature_chart.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace asperity {

namespace {

constexpr double kOff = std::numeric_limits<double>::quiet_NaN();

double floor_height_mm(const FloorFeature &floor, Vec2 p) {
  const bool on_island = std::any_of(floor.islands.begin(), floor.islands.end(), [p](const Outline &island) {
    return island.depth_mm(p) > -kFloorEdge_mm;
  });
  return floor.outline.depth_mm(p) >= kFloorEdge_mm && !on_island ? floor.z_mm : kOff;
}

double dome_height_mm(const DomeFeature &dome, Vec2 p) {
  if (dome.outline.depth_mm(p) < kFloorEdge_mm)
    return kOff;
  if (dome.surface)
    return dome.surface->top_mm(p).value_or(kOff);
  const double rho = glm::length(p - dome.centre), r = dome.sphere_radius_mm;
  return rho <= dome.rim_radius_mm ? dome.apex_z_mm - (r - std::sqrt(r * r - rho * rho)) : kOff;
}

/// wanted(p): height over p.
template <class Wanted>
FloorChart filled_floor(const Blank &blank, FloorChart chart, int threads, const Wanted &wanted) {
  constexpr std::size_t kRows = 8;
  for_each_band(chart.ny, kRows, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t j = begin; j < end; ++j)
      for (std::size_t i = 0; i < chart.nx; ++i) {
        const Vec2 p(chart.x_mm(i), chart.y_mm(j));
        const std::size_t cell = chart.at(i, j);
        const double height = wanted(p);
        const auto top = blank.top_mm(p);
        chart.wanted_mm[cell] = static_cast<float>(height - chart.base_mm);
        chart.blank_mm[cell] =
            top ? static_cast<float>(*top - height) : -std::numeric_limits<float>::infinity();
      }
  });
  return chart;
}

WallChart filled_wall(const Blank &blank, WallChart chart, int threads) {
  std::vector<char> is_like_below(chart.rows(), 0);
  for (std::size_t row = 1; row < chart.rows(); ++row)
    is_like_below[row] = blank.has_same_slice(chart.z_mm[row - 1], chart.z_mm[row]);
  constexpr std::size_t kColumns = 256;
  for_each_band(chart.columns(), kColumns, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t row = 0; row < chart.rows(); ++row) {
      float *const cells = chart.blank_mm.data() + chart.at(0, row);
      if (is_like_below[row]) {
        std::copy(cells + begin - chart.columns(), cells + end - chart.columns(), cells + begin);
        continue;
      }
      for (std::size_t column = begin; column < end; ++column)
        cells[column] = static_cast<float>(
            blank.wall_stock_mm(chart.foot[column], chart.normal[column], chart.z_mm[row], chart.band_mm));
    }
  });
  return chart;
}

} // namespace

WallChart wall_chart_of(const Job &job, const WallFeature &wall, std::vector<double> s_mm,
                        std::vector<double> z_mm, int threads) {
  const bool inside = wall.side == Side::inside;
  return filled_wall(
      job.blank, make_wall_chart(wall.outline, inside, std::move(s_mm), std::move(z_mm), threads), threads);
}

WallChart wall_chart_of(const Job &job, const WallFeature &wall, double spacing_mm, int threads) {
  const bool inside = wall.side == Side::inside;
  return filled_wall(
      job.blank, make_wall_chart(wall.outline, inside, wall.z_bottom_mm, wall.z_top_mm, spacing_mm, threads),
      threads);
}

FloorChart floor_chart_of(const Job &job, const Feature &feature, Vec2 low_mm, Vec2 high_mm,
                          double spacing_mm, int threads) {
  const auto *floor = std::get_if<FloorFeature>(&feature);
  const double base_mm = floor != nullptr ? floor->z_mm : std::get<DomeFeature>(feature).apex_z_mm;
  FloorChart chart = make_floor_chart(low_mm, high_mm, spacing_mm, base_mm, threads);
  if (floor != nullptr)
    return filled_floor(job.blank, std::move(chart), threads,
                        [floor](Vec2 p) { return floor_height_mm(*floor, p); });
  const auto &dome = std::get<DomeFeature>(feature);
  return filled_floor(job.blank, std::move(chart), threads,
                      [&dome](Vec2 p) { return dome_height_mm(dome, p); });
}

} // namespace asperity
