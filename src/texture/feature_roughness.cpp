// Roughness of a feature: map, patch and two traces.
#include "asperity/texture/own_roughness.h"

#include "lay_direction.h"
#include "pass_part.h"
#include "ra_map.h"
#include "trace_line.h"

#include "asperity/base/parallel.h"
#include "asperity/base/units.h"
#include "asperity/chart/feature_chart.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <thread>
#include <type_traits>
#include <vector>

namespace asperity {

namespace {

/// Sections to lay for five to read: open traces lose half a cutoff at each end.
constexpr double kSections = 6;
/// Side of the areal patch [mm], and how finely it is laid.
constexpr double kPatch_mm = 3.0, kPatchRow_mm = 0.05, kCellsPerMark = 8;
constexpr double kFinestCell_mm = 0.0025, kCoarsestCell_mm = 0.0125;

struct Place {
  double x_mm = 0, y_mm = 0; ///< s and z on walls
};

struct Asked {
  const Feature &feature;
  const Chart &chart;
  const TextureSource &source;
  int threads;
  double pitch_mm; ///< of the tooth marks
};

double mark_pitch_mm(const Chart &chart, const TextureSource &source) {
  const auto *wall = std::get_if<WallChart>(&chart);
  return wall != nullptr ? mark_pitch_mm(*wall, source) : floor_pitch_mm(std::get<FloorChart>(chart), source);
}

std::vector<double> places_over(double low, double high, double spacing_mm) {
  const auto count = static_cast<std::size_t>(std::max(3.0, std::floor((high - low) / spacing_mm)));
  std::vector<double> places;
  for (std::size_t i = 0; i < count; ++i)
    places.push_back(low + (static_cast<double>(i) + 0.5) * (high - low) / static_cast<double>(count));
  return places;
}

double cell_for(double pitch_mm) {
  return pitch_mm > 0 ? std::clamp(pitch_mm / kCellsPerMark, kFinestCell_mm, kCoarsestCell_mm)
                      : kCoarsestCell_mm;
}

/// Stretch of kPatch_mm about a middle, moved to lie within low..high.
std::pair<double, double> stretch_about(double middle, double low, double high) {
  const double half = std::min(kPatch_mm, high - low) / 2.0;
  const double held = std::clamp(middle, low + half, high - half);
  return {held - half, held + half};
}

std::optional<HeightGrid> wall_patch(const Asked &asked, const WallFeature &wall, Place place,
                                     const Progress &progress) {
  const auto [s0, s1] = stretch_about(place.x_mm, 0.0, wall.outline.length_mm());
  const auto [z0, z1] = stretch_about(place.y_mm, wall.z_bottom_mm, wall.z_top_mm);
  WallChart strip = wall_chart_of(asked.source.job, wall, places_over(s0, s1, cell_for(asked.pitch_mm)),
                                  places_over(z0, z1, kPatchRow_mm), asked.threads);
  sweep_wall_with_marks(strip, asked.source, asked.threads, progress);
  return height_grid(strip, asked.threads);
}

HeightGrid floor_grid(const Asked &asked, Place place, const Progress &progress) {
  const Vec2 middle(place.x_mm, place.y_mm), half(kPatch_mm / 2.0);
  FloorChart patch = floor_chart_of(asked.source.job, asked.feature, middle - half, middle + half,
                                    cell_for(asked.pitch_mm), asked.threads);
  sweep_floor_with_marks(patch, asked.source, asked.threads, progress);
  return height_grid(patch, asked.threads);
}

/// Five sections about a place; again and longer where the first reading asks for a longer cutoff.
Trace trace_about(const Asked &asked, const std::string &along, Place place) {
  const bool first_axis = along == "s" || along == "x";
  TraceRequest request;
  request.along = along;
  request.pitch_mm = asked.pitch_mm;
  request.at_mm = first_axis ? place.y_mm : place.x_mm;
  const double middle = first_axis ? place.x_mm : place.y_mm;
  Trace trace;
  double cutoff_mm = kWindow_mm;
  while (true) {
    request.length_mm = kSections * cutoff_mm;
    request.from_mm = middle - *request.length_mm / 2.0;
    std::string why;
    trace = lay_trace(asked.feature, asked.chart, asked.source, request, asked.threads, why);
    if (trace.reading.settings.cutoff_mm <= cutoff_mm)
      return trace;
    cutoff_mm = trace.reading.settings.cutoff_mm;
  }
}

/// Once round a wall.
Trace trace_round(const Asked &asked, Place place) {
  TraceRequest round;
  round.at_mm = place.y_mm;
  round.pitch_mm = asked.pitch_mm;
  std::string why;
  return lay_trace(asked.feature, asked.chart, asked.source, round, asked.threads, why);
}

/// Beside each other; the longest is best the first.
void do_all(const std::vector<std::function<void()>> &works, int threads) {
  for_each_band(works.size(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      works[i]();
  });
}

/// A patch tells which way the grain runs; traces along it and across it. False when cancelled, or where the
/// chart's cells are uneven.
bool read_patch(FeatureRoughness &result, const Asked &asked, Place place, const Progress &progress) {
  const auto *wall = std::get_if<WallFeature>(&asked.feature);
  const auto patch = wall != nullptr ? wall_patch(asked, *wall, place, progress)
                                     : std::optional(floor_grid(asked, place, progress));
  if (!patch || progress.cancelled())
    return false;
  const HeightGrid rough = rough_surface(*patch, {kWindow_mm, 0.0}, asked.threads);
  const Lay lay = lay_of(rough);
  const std::string across = wall != nullptr ? "s" : "x", up = wall != nullptr ? "z" : "y";
  result.lay_deg = lay.deg;
  result.lay = lay_in_words(lay, across, up);
  do_all({[&] { result.along = trace_about(asked, runs_up(lay) ? up : across, place); },
          [&] { result.across = trace_about(asked, runs_up(lay) ? across : up, place); },
          [&] { result.areal = areal_parameters(rough); }},
         asked.threads);
  return true;
}

Vec3 point_of(const Chart &chart, std::size_t cell) {
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    const Vec2 foot = wall->foot[cell % wall->columns()];
    return {foot.x, foot.y, wall->z_mm[cell / wall->columns()]};
  }
  const auto &floor = std::get<FloorChart>(chart);
  return {floor.x_mm(cell % floor.nx), floor.y_mm(cell / floor.nx),
          floor.base_mm + static_cast<double>(floor.wanted_mm[cell])};
}

double skin_share_of(const Chart &chart, int threads) {
  struct Count {
    std::size_t cells = 0, skin = 0;
  };
  constexpr std::size_t kBand = std::size_t{1} << 16;
  const std::size_t cells = cell_count(chart);
  std::vector<Count> counts(band_count(cells, kBand));
  const auto count_over = [](const auto &c, std::size_t begin, std::size_t end) {
    Count count;
    for (std::size_t cell = begin; cell < end; ++cell) {
      if constexpr (std::is_same_v<std::decay_t<decltype(c)>, FloorChart>)
        if (!c.in_feature(cell))
          continue;
      ++count.cells;
      count.skin += c.is_cut(cell) ? 0 : 1;
    }
    return count;
  };
  for_each_band(cells, kBand, threads, [&](std::size_t begin, std::size_t end) {
    counts[begin / kBand] = std::visit([&](const auto &c) { return count_over(c, begin, end); }, chart);
  });
  Count all;
  for (const Count &count : counts)
    all = {all.cells + count.cells, all.skin + count.skin};
  return all.cells > 0 ? static_cast<double>(all.skin) / static_cast<double>(all.cells) : 0.0;
}

void note_map(FeatureRoughness &result, const Chart &chart, const TimedPath &path, const RaMap &map,
              std::size_t roughest) {
  result.map_columns = map.columns;
  result.map_rows = map.rows;
  for (const RaWindow &window : map.windows)
    result.map_ra_um.push_back(static_cast<float>(window.ra_um));
  const RaWindow &worst = map.windows[roughest];
  result.worst_ra_um = worst.ra_um;
  result.worst_place_mm = point_of(chart, worst.roughest);
  const std::uint32_t owner = std::visit([&](const auto &c) { return c.owner[worst.roughest]; }, chart);
  if (owner != kNobody)
    result.worst_line = path.pieces[owner].line;
}

void note_heights(FeatureRoughness &result) {
  result.ra_um =
      um_from_mm(std::max(result.along.reading.parameters.ra_mm, result.across.reading.parameters.ra_mm));
  result.rz_um =
      um_from_mm(std::max(result.along.reading.parameters.rz_mm, result.across.reading.parameters.rz_mm));
}

} // namespace

void add_own_roughness(FeatureRoughness &roughness, const Material &material) {
  if (!roughness.measured)
    return;
  roughness.ra_band = ra_band(roughness.ra_um, {material.own_ra_low_um, material.own_ra_high_um});
  roughness.grade_low = roughness_grade(roughness.ra_band.low_um);
  roughness.grade_high = roughness_grade(roughness.ra_band.high_um);
}

double roughness_bytes(double columns, double rows, double spacing_mm, double pieces_round) {
  // Blocks of the map, one a thread.
  const double map =
      ra_map_bytes(columns * rows, spacing_mm) * std::max(1u, std::thread::hardware_concurrency());
  // The patch, as chart and as filtered heights; or the parts of the path that run past a trace, twice.
  constexpr double kPatchBytesPerCell = 32.0;
  const double patch_row_mm = pieces_round > 0 ? kPatchRow_mm : kFinestCell_mm;
  const double patch = kPatchBytesPerCell * (kPatch_mm / kFinestCell_mm) * (kPatch_mm / patch_row_mm);
  const double parts =
      pieces_round * static_cast<double>(sizeof(PassPart) + sizeof(SweptPiece) + sizeof(PackedOffset));
  return std::max(map, patch + parts);
}

FeatureRoughness roughness_of(const Feature &feature, const Chart &chart, const TextureSource &source,
                              int threads, const Progress &progress) {
  FeatureRoughness result;
  const auto *wall = std::get_if<WallFeature>(&feature);
  result.skin_share = skin_share_of(chart, threads);
  // Upright walls only: no such rule is known for printed tops.
  if (wall != nullptr && source.job.blank.layer_height_mm > 0)
    result.skin_ra = printed_wall_ra_um(source.job.blank.layer_height_mm, 0.0);

  // Where it is roughest, and where it is as usual.
  progress.at("roughness", 0.0);
  const RaMap map = ra_map(chart, source, threads);
  const auto roughest = roughest_window(map);
  if (!roughest || progress.cancelled())
    return result;
  note_map(result, chart, source.path, map, *roughest);
  const std::size_t usual = *usual_window(map, *roughest, kSections * kWindow_mm / 2.0);
  const Place place{map.x_mm(usual % map.columns), map.y_mm(usual / map.columns)};

  // Once round a wall, beside that a patch and the traces that depend on it.
  const Asked asked{feature, chart, source, threads, mark_pitch_mm(chart, source)};
  progress.at("roughness", 0.4);
  Progress silent; // any thread may do it, and only this one may report
  silent.heeds = &progress;
  bool has_patch = false;
  do_all({[&] { result.around = wall != nullptr ? trace_round(asked, place) : Trace{}; },
          [&] { has_patch = read_patch(result, asked, place, silent); }},
         threads);
  if (!has_patch || progress.cancelled())
    return result;
  note_heights(result);
  result.measured = true;
  add_own_roughness(result, source.job.material);
  progress.at("roughness", 1.0);
  return result;
}

} // namespace asperity
