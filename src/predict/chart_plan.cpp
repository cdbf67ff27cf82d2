#include "asperity/predict/chart_plan.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr std::size_t kRowBand = 8;

/// How far a chart reaches along its columns and its rows [mm].
struct Extent {
  Vec2 operator()(const WallFeature &wall) const {
    return {wall.outline.length_mm(), wall.z_top_mm - wall.z_bottom_mm};
  }
  Vec2 operator()(const FloorFeature &floor) const { return floor.outline.high() - floor.outline.low(); }
  Vec2 operator()(const DomeFeature &dome) const { return dome.outline.high() - dome.outline.low(); }
};

WallChart wall_chart(const Job &job, const WallFeature &wall, double spacing_mm, int threads) {
  WallChart chart = make_wall_chart(wall.outline, wall.side == Side::inside, wall.z_bottom_mm, wall.z_top_mm,
                                    spacing_mm, threads);
  for_each_band(chart.rows(), kRowBand, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t row = begin; row < end; ++row) {
      float *const here = chart.blank_mm.data() + chart.at(0, row);
      if (row > begin && job.blank.has_same_slice(chart.z_mm[row - 1], chart.z_mm[row])) {
        std::copy(here - chart.columns(), here, here);
        continue;
      }
      for (std::size_t column = 0; column < chart.columns(); ++column)
        here[column] = static_cast<float>(job.blank.wall_stock_mm(chart.foot[column], chart.normal[column],
                                                                  chart.z_mm[row], chart.band_mm));
    }
  });
  return chart;
}

/// wanted(p) gives the wanted height over p, NaN outside the feature.
template <typename Wanted>
FloorChart floor_chart(const Job &job, const Outline &outline, double base_mm, double spacing_mm, int threads,
                       const Wanted &wanted) {
  FloorChart chart = make_floor_chart(outline.low(), outline.high(), spacing_mm, base_mm, threads);
  for_each_band(chart.ny, kRowBand, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t j = begin; j < end; ++j) {
      for (std::size_t i = 0; i < chart.nx; ++i) {
        const Vec2 p(chart.x_mm(i), chart.y_mm(j));
        const std::size_t cell = chart.at(i, j);
        const double height = wanted(p);
        chart.wanted_mm[cell] = static_cast<float>(height - base_mm);
        const auto top = job.blank.top_mm(p);
        chart.blank_mm[cell] =
            top ? static_cast<float>(*top - height) : -std::numeric_limits<float>::infinity();
      }
    }
  });
  return chart;
}

constexpr double kOutside = std::numeric_limits<double>::quiet_NaN();

} // namespace

double chart_spacing_mm(const Job &job, const Feature &feature) {
  const bool is_wall = std::holds_alternative<WallFeature>(feature);
  const auto &asked = is_wall ? job.resolution.wall_spacing_mm : job.resolution.floor_spacing_mm;
  const Vec2 extent = std::visit(Extent{}, feature);
  return asked ? *asked : std::max(kFinestSpacing_mm, std::sqrt(extent.x * extent.y / kMostCells));
}

ChartSize chart_size(const Job &job, const Feature &feature) {
  const double spacing = chart_spacing_mm(job, feature);
  const Vec2 extent = std::visit(Extent{}, feature);
  // Half a cell at an end is a whole one.
  return {std::ceil(extent.x / spacing), std::ceil(extent.y / spacing), spacing};
}

double chart_cells(const Job &job, const Feature &feature) { return chart_size(job, feature).cells(); }

Chart make_chart(const Job &job, const Feature &feature, int threads) {
  const double spacing = chart_spacing_mm(job, feature);
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    return wall_chart(job, *wall, spacing, threads);
  if (const auto *floor = std::get_if<FloorFeature>(&feature))
    return floor_chart(job, floor->outline, floor->z_mm, spacing, threads, [floor](Vec2 p) {
      const bool on_island =
          std::any_of(floor->islands.begin(), floor->islands.end(),
                      [p](const Outline &island) { return island.depth_mm(p) > -kFloorEdge_mm; });
      return floor->outline.depth_mm(p) >= kFloorEdge_mm && !on_island ? floor->z_mm : kOutside;
    });
  const auto &dome = std::get<DomeFeature>(feature);
  return floor_chart(job, dome.outline, dome.apex_z_mm, spacing, threads, [&dome](Vec2 p) {
    if (dome.outline.depth_mm(p) < kFloorEdge_mm)
      return kOutside;
    if (dome.surface)
      return dome.surface->top_mm(p).value_or(kOutside);
    const double rho = glm::length(p - dome.centre), r = dome.sphere_radius_mm;
    return rho <= dome.rim_radius_mm ? dome.apex_z_mm - (r - std::sqrt(r * r - rho * rho)) : kOutside;
  });
}

} // namespace asperity
