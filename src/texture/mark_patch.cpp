// A small part of a feature with every tooth mark on it.
#include "asperity/texture/mark_patch.h"

#include "asperity/chart/feature_chart.h"
#include "asperity/texture/floor_texture.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Column of the flat chart by its arc length within the outline; rising, as a strip of wall must be.
std::vector<std::pair<double, std::size_t>> places_round(const FloorChart &flat, double round_mm) {
  std::vector<std::pair<double, std::size_t>> places;
  for (std::size_t i = 0; i < flat.nx; ++i) {
    const double s = flat.x_mm(i);
    places.emplace_back(s - round_mm * std::floor(s / round_mm), i);
  }
  std::sort(places.begin(), places.end());
  return places;
}

std::optional<FloorChart> wall_patch(const WallFeature &wall, const TextureSource &source,
                                     const PatchAsk &ask, int threads, const Progress &progress) {
  const double round_mm = wall.outline.length_mm();
  const double bottom = std::max(ask.low_mm.y, wall.z_bottom_mm),
               top = std::min(ask.high_mm.y, wall.z_top_mm);
  const double end = std::min(ask.high_mm.x, ask.low_mm.x + round_mm);
  if (end - ask.low_mm.x < ask.spacing_mm || top - bottom < ask.spacing_mm)
    return std::nullopt;
  FloorChart flat = make_floor_chart({ask.low_mm.x, bottom}, {end, top}, ask.spacing_mm, 0.0);
  const auto places = places_round(flat, round_mm);
  std::vector<double> columns, rows;
  for (const auto &[s, i] : places)
    columns.push_back(s);
  for (std::size_t j = 0; j < flat.ny; ++j)
    rows.push_back(flat.y_mm(j));
  WallChart strip = wall_chart_of(source.job, wall, std::move(columns), std::move(rows), threads);
  if (!sweep_wall_with_marks(strip, source, threads, progress))
    return std::nullopt;
  for (std::size_t j = 0; j < flat.ny; ++j)
    for (std::size_t k = 0; k < places.size(); ++k) {
      const std::size_t from = strip.at(k, j), to = flat.at(places[k].second, j);
      flat.envelope_mm[to] = strip.envelope_mm[from];
      flat.blank_mm[to] = strip.blank_mm[from];
      flat.owner[to] = strip.owner[from];
    }
  return flat;
}

} // namespace

std::optional<FloorChart> mark_patch(const Feature &feature, const TextureSource &source, const PatchAsk &ask,
                                     int threads, const Progress &progress) {
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    return wall_patch(*wall, source, ask, threads, progress);
  const Outline &outline = outline_of(feature);
  const Vec2 low = glm::max(ask.low_mm, outline.low()), high = glm::min(ask.high_mm, outline.high());
  if (high.x - low.x < ask.spacing_mm || high.y - low.y < ask.spacing_mm)
    return std::nullopt;
  FloorChart patch = floor_chart_of(source.job, feature, low, high, ask.spacing_mm, threads);
  if (!sweep_floor_with_marks(patch, source, threads, progress))
    return std::nullopt;
  return patch;
}

} // namespace asperity
