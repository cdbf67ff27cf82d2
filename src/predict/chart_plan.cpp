#include "asperity/predict/chart_plan.h"

#include "asperity/chart/feature_chart.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// How far a chart reaches along its columns and its rows [mm].
Vec2 extent_mm(const Feature &feature) {
  const Outline &outline = outline_of(feature);
  const auto *wall = std::get_if<WallFeature>(&feature);
  return wall != nullptr ? Vec2(outline.length_mm(), wall->z_top_mm - wall->z_bottom_mm)
                         : outline.high() - outline.low();
}

} // namespace

double chart_spacing_mm(const Job &job, const Feature &feature) {
  const bool is_wall = std::holds_alternative<WallFeature>(feature);
  const auto &asked = is_wall ? job.resolution.wall_spacing_mm : job.resolution.floor_spacing_mm;
  const Vec2 extent = extent_mm(feature);
  return asked ? *asked : std::max(kFinestSpacing_mm, std::sqrt(extent.x * extent.y / kMostCells));
}

ChartSize chart_size(const Job &job, const Feature &feature) {
  const double spacing = chart_spacing_mm(job, feature);
  const Vec2 extent = extent_mm(feature);
  // Half a cell at an end is a whole one.
  return {std::ceil(extent.x / spacing), std::ceil(extent.y / spacing), spacing};
}

double chart_cells(const Job &job, const Feature &feature) { return chart_size(job, feature).cells(); }

Chart make_chart(const Job &job, const Feature &feature, int threads) {
  const double spacing = chart_spacing_mm(job, feature);
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    return wall_chart_of(job, *wall, spacing, threads);
  const Outline &outline = outline_of(feature);
  return floor_chart_of(job, feature, outline.low(), outline.high(), spacing, threads);
}

} // namespace asperity
