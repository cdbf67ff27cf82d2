// Lays lines of fine cells on walls and floors.
#include "trace_line.h"

#include "asperity/chart/feature_chart.h"
#include "floor_marks_at.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Even stretch of `count` cells, places at their middles.
struct Cells {
  double begin_mm = 0, spacing_mm = 0;
  std::size_t count = 0;
  double at(std::size_t i) const { return begin_mm + (static_cast<double>(i) + 0.5) * spacing_mm; }
};

Cells cells_over(double begin_mm, double length_mm, double spacing_mm) {
  const double count = std::max(1.0, std::round(length_mm / spacing_mm));
  return {begin_mm, length_mm / count, static_cast<std::size_t>(count)};
}

/// Marks finer than this are not followed [mm].
constexpr double kFinest_mm = 0.0005;

double spacing_for(double pitch_mm) {
  return pitch_mm > 0 ? std::clamp(pitch_mm / kPointsPerMark, kFinest_mm, kCoarsest_mm) : kCoarsest_mm;
}

/// The part of [from, from + length] within [low, high], the whole when no length is asked for.
std::optional<Cells> cells_within(const TraceRequest &request, double low, double high, double spacing_mm,
                                  std::string &why) {
  const double begin = request.length_mm ? std::max(request.from_mm, low) : low;
  const double end = request.length_mm ? std::min(request.from_mm + *request.length_mm, high) : high;
  if (end - begin < 2 * spacing_mm) {
    why = fmt::format(
        "nothing of the surface lies between {:.3f} and {:.3f} mm along {}; it reaches from {:.3f} to "
        "{:.3f} mm",
        request.from_mm, request.from_mm + request.length_mm.value_or(0), request.along, low, high);
    return std::nullopt;
  }
  return cells_over(begin, end - begin, spacing_mm);
}

/// Longest stretch laid at the finest spacing [mm].
constexpr double kFineLength_mm = 6.0;

/// Six sections of the usual cutoff: five to read and one for the filter to settle.
constexpr double kUsualLength_mm = 4.8;

TraceLine line_along_wall(const WallFeature &wall, const TextureSource &source, const TraceRequest &request,
                          double pitch_mm, int threads, const Progress &progress) {
  // All round, or a stretch; columns must rise within the outline, so a stretch over its seam comes in two
  // parts.
  // A stretch of a few sections is laid as finely as ISO 3274 asks of a stylus.
  const double round_mm = wall.outline.length_mm();
  const bool is_short = request.length_mm && *request.length_mm <= kFineLength_mm;
  const double spacing = is_short ? kFinest_mm : spacing_for(pitch_mm);
  TraceLine line;
  line.pitch_mm = pitch_mm;
  line.closed = !request.length_mm || *request.length_mm >= round_mm;
  if (line.closed && round_mm / spacing > static_cast<double>(kMostTracePoints))
    line.closed = false;
  const double from = line.closed && !request.length_mm ? 0.0 : request.from_mm;
  const double length =
      line.closed ? round_mm : std::min(request.length_mm.value_or(kUsualLength_mm), round_mm);
  const Cells cells = cells_over(from, length, spacing);
  std::vector<std::pair<double, std::size_t>> places;
  for (std::size_t i = 0; i < cells.count; ++i) {
    const double s = cells.at(i);
    places.emplace_back(s - round_mm * std::floor(s / round_mm), i);
  }
  std::sort(places.begin(), places.end());

  std::vector<double> columns;
  for (const auto &[s, i] : places)
    columns.push_back(s);
  WallChart strip = wall_chart_of(source.job, wall, std::move(columns), {request.at_mm}, threads);
  if (!sweep_wall_with_marks(strip, source, threads, progress))
    return {};
  line.begin_mm = cells.at(0);
  line.spacing_mm = cells.spacing_mm;
  line.height_mm.resize(cells.count);
  line.owner.resize(cells.count);
  for (std::size_t column = 0; column < cells.count; ++column) {
    line.height_mm[places[column].second] = static_cast<double>(strip.residual_mm(column));
    line.owner[places[column].second] = strip.is_cut(column) ? strip.owner[column] : kNobody;
  }
  return line;
}

TraceLine line_up_wall(const WallFeature &wall, const TextureSource &source, const TraceRequest &request,
                       int threads, const Progress &progress, std::string &why) {
  const auto cells = cells_within(request, wall.z_bottom_mm, wall.z_top_mm, kCoarsest_mm, why);
  if (!cells)
    return {};
  std::vector<double> rows;
  for (std::size_t i = 0; i < cells->count; ++i)
    rows.push_back(cells->at(i));
  const double round_mm = wall.outline.length_mm();
  WallChart strip = wall_chart_of(
      source.job, wall, {request.at_mm - round_mm * std::floor(request.at_mm / round_mm)}, rows, threads);
  if (!sweep_wall_with_marks(strip, source, threads, progress))
    return {};
  TraceLine line;
  line.begin_mm = cells->at(0);
  line.spacing_mm = cells->spacing_mm;
  for (std::size_t row = 0; row < strip.rows(); ++row) {
    line.height_mm.push_back(static_cast<double>(strip.residual_mm(row)));
    line.owner.push_back(strip.is_cut(row) ? strip.owner[row] : kNobody);
  }
  return line;
}

/// The longest stretch of cells with a surface; begin and end.
std::pair<std::size_t, std::size_t> longest_stretch(const FloorChart &row) {
  std::pair<std::size_t, std::size_t> longest{0, 0};
  std::size_t begin = 0;
  const std::size_t count = row.nx * row.ny;
  for (std::size_t i = 0; i <= count; ++i) {
    if (i < count && row.in_feature(i) && std::isfinite(row.residual_mm(i)))
      continue;
    if (i - begin > longest.second - longest.first)
      longest = {begin, i};
    begin = i + 1;
  }
  return longest;
}

} // namespace

TraceLine wall_line(const WallFeature &wall, const WallChart &chart, const TextureSource &source,
                    const TraceRequest &request, int threads, const Progress &progress, std::string &why) {
  if (request.along == "z")
    return line_up_wall(wall, source, request, threads, progress, why);
  if (request.along != "s")
    why = "a trace on a wall runs along s (round it) or z (up it)";
  else if (request.at_mm < wall.z_bottom_mm || request.at_mm > wall.z_top_mm)
    why = fmt::format("height {:.3f} mm is off the wall, which reaches from {:.3f} to {:.3f} mm",
                      request.at_mm, wall.z_bottom_mm, wall.z_top_mm);
  else
    return line_along_wall(wall, source, request,
                           request.pitch_mm ? *request.pitch_mm : mark_pitch_mm(chart, source), threads,
                           progress);
  return {};
}

TraceLine floor_line(const Feature &feature, const FloorChart &chart, const TextureSource &source,
                     const TraceRequest &request, int threads, const Progress &progress, std::string &why) {
  if (request.along != "x" && request.along != "y") {
    why = "a trace on a floor or dome runs along x or y";
    return {};
  }
  const bool along_x = request.along == "x";
  const Outline &outline = outline_of(feature);
  TraceLine line;
  line.pitch_mm = request.pitch_mm ? *request.pitch_mm : floor_pitch_mm(chart, source);
  const auto cells =
      cells_within(request, along_x ? outline.low().x : outline.low().y,
                   along_x ? outline.high().x : outline.high().y, spacing_for(line.pitch_mm), why);
  if (!cells)
    return {};

  // One row or column of cells; the patch's ends are the cells' outer edges.
  const double end_mm = cells->begin_mm + cells->spacing_mm * static_cast<double>(cells->count);
  const Vec2 low = along_x ? Vec2(cells->begin_mm, request.at_mm) : Vec2(request.at_mm, cells->begin_mm);
  const Vec2 high = along_x ? Vec2(end_mm, request.at_mm) : Vec2(request.at_mm, end_mm);
  FloorChart row = floor_chart_of(source.job, feature, low, high, cells->spacing_mm, threads);
  if (!sweep_floor_with_marks(row, source, threads, progress))
    return {};
  const auto [first, last] = longest_stretch(row);
  if (last - first < 2) {
    why = fmt::format("nothing of the surface lies along {} at {:.3f} mm", request.along, request.at_mm);
    return {};
  }
  line.begin_mm = cells->at(first);
  line.spacing_mm = cells->spacing_mm;
  for (std::size_t i = first; i < last; ++i) {
    line.height_mm.push_back(static_cast<double>(row.residual_mm(i)));
    line.owner.push_back(row.is_cut(i) ? row.owner[i] : kNobody);
  }
  return line;
}

double floor_pitch_mm(const FloorChart &chart, const TextureSource &source) {
  FloorMarks marks(source);
  std::vector<bool> is_owner(source.path.pieces.size(), false);
  std::uint32_t last = kNobody; // neighbours mostly have the same
  for (const std::uint32_t owner : chart.owner) {
    if (owner != last && owner != kNobody)
      is_owner[owner] = true;
    last = owner;
  }
  double least = 0;
  for (std::size_t i = 0; i < is_owner.size(); ++i) {
    const PathPiece &piece = source.path.pieces[i];
    if (!is_owner[i] || piece.kind != MoveKind::feed)
      continue;
    Moment moment = moment_at(piece, 0.5);
    const double speed = piece.speed_at(0.5 * piece.length_mm);
    if (speed > 0)
      moment.plan_speed_mm_per_s *= piece.feed_mm_per_s / speed;
    const double pitch = marks.tooth(piece.tool, moment).pitch_mm;
    if (pitch > 0 && (least == 0 || pitch < least))
      least = pitch;
  }
  return least;
}

} // namespace asperity
