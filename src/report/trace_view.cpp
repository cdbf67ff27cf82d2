// What every output of a trace says.
#include "asperity/report/trace_view.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace asperity {

std::uint32_t TraceView::line(std::size_t point) const {
  const std::uint32_t owner = trace.owner[point];
  return owner < path.pieces.size() ? path.pieces[owner].line : 0;
}

std::vector<double> section_bounds_mm(const TraceView &view) {
  const int sections = view.trace.reading.fit.sections;
  if (sections <= 0)
    return {view.low_mm(), view.high_mm()};
  // As many ends are dropped on either side: the sections stand about the trace's middle.
  const double section = view.trace.reading.settings.cutoff_mm;
  const double begin = 0.5 * (view.low_mm() + view.high_mm() - section * sections);
  std::vector<double> bounds;
  for (int i = 0; i <= sections; ++i)
    bounds.push_back(begin + section * i);
  return bounds;
}

std::vector<LineShare> line_shares(const TraceView &view) {
  std::map<std::uint32_t, std::size_t> points;
  for (std::size_t i = 0; i < view.points(); ++i)
    ++points[view.line(i)];
  std::vector<LineShare> shares;
  for (const auto &[line, count] : points)
    shares.push_back({line, static_cast<double>(count) / static_cast<double>(view.points())});
  std::stable_sort(shares.begin(), shares.end(),
                   [](const LineShare &a, const LineShare &b) { return a.share > b.share; });
  return shares;
}

namespace {

/// Lines that follow each other closely, as the many short moves of a curve do.
struct LineRun {
  std::uint32_t first = 0, last = 0;
  std::size_t count = 0;
  double share = 0;
};

std::vector<LineRun> line_runs(std::vector<LineShare> shares) {
  constexpr std::uint32_t kWidestGap = 8;
  std::sort(shares.begin(), shares.end(),
            [](const LineShare &a, const LineShare &b) { return a.line < b.line; });
  std::vector<LineRun> runs;
  for (const LineShare &share : shares) {
    if (runs.empty() || share.line > runs.back().last + kWidestGap)
      runs.push_back({share.line, share.line, 0, 0.0});
    runs.back().last = share.line;
    ++runs.back().count;
    runs.back().share += share.share;
  }
  std::stable_sort(runs.begin(), runs.end(),
                   [](const LineRun &a, const LineRun &b) { return a.share > b.share; });
  return runs;
}

/// Distance on the wall for a unit of the cutter axis's path: less round the outside of a bend.
double wall_per_path(const WallFeature &wall, double s_mm, double cutter_radius_mm) {
  const double round_mm = wall.outline.length_mm();
  const double s = s_mm - round_mm * std::floor(s_mm / round_mm);
  const OutlineElement &element = wall.outline.elements()[wall.outline.element_at(s)];
  if (!element.is_arc())
    return 1.0;
  const bool bulges_towards_cutter = (element.sweep_rad > 0.0) == (wall.side == Side::outside);
  const double radius = element.radius_mm();
  const double axis_radius = radius + (bulges_towards_cutter ? cutter_radius_mm : -cutter_radius_mm);
  return axis_radius > 0.0 ? radius / axis_radius : 1.0;
}

} // namespace

std::string line_share_text(const TraceView &view, std::size_t most) {
  const auto percent = [](double share) {
    return share < 0.005 ? std::string("under 1%") : fixed_text(100.0 * share, 0) + "%";
  };
  std::vector<LineShare> shares = line_shares(view);
  std::erase_if(shares, [](const LineShare &s) { return s.line == 0; });
  std::string text;
  const auto add = [&](const std::string &words) { text += (text.empty() ? "" : ", ") + words; };
  if (shares.size() <= most) {
    for (const LineShare &s : shares)
      add(fmt::format("line {} ({})", s.line, percent(s.share)));
    return text;
  }
  const std::vector<LineRun> runs = line_runs(std::move(shares));
  for (std::size_t i = 0; i < runs.size() && i < most; ++i)
    add(runs[i].count == 1 ? fmt::format("line {} ({})", runs[i].first, percent(runs[i].share))
                           : fmt::format("{} of lines {} to {} ({})", runs[i].count, runs[i].first,
                                         runs[i].last, percent(runs[i].share)));
  return runs.size() > most ? text + fmt::format(" and {} more", runs.size() - most) : text;
}

double mark_distance_mm(const TraceView &view, std::size_t point) {
  const double by_width = view.trace.reading.parameters.rsm_mm;
  if (!view.is_cut(point))
    return by_width;
  const PathPiece &piece = view.path.pieces[view.trace.owner[point]];
  const Cutter *cutter = view.job.cutter(piece.tool);
  if (!cutter || cutter->flutes <= 0 || !(piece.spindle_rpm > 0.0))
    return by_width;

  // Along the feed the marks follow each other; across it they do not.
  const Vec3 heading = piece.curve.velocity(0.5);
  const std::string &along = view.trace.along;
  const bool is_along = along == "s" || (along == "x" && std::abs(heading.x) > std::abs(heading.y)) ||
                        (along == "y" && std::abs(heading.y) > std::abs(heading.x));
  if (!is_along)
    return by_width;
  const auto *wall = std::get_if<WallFeature>(&view.feature);
  const double turn_mm =
      piece.feed_mm_per_s / rev_per_s_from_rpm(piece.spindle_rpm) *
      (wall != nullptr ? wall_per_path(*wall, view.place_mm(point), 0.5 * cutter->diameter_mm) : 1.0);
  const bool has_runout = view.job.effects.runout && cutter->runout_mm > 0.0;
  return has_runout ? turn_mm : turn_mm / cutter->flutes;
}

namespace {

std::string direction_text(const TraceView &view) {
  const std::string &along = view.trace.along;
  if (along == "s")
    return "along s (round the wall)";
  return along == "z" ? "along z (up the wall)" : "along " + along;
}

std::string other_axis(const std::string &along) {
  return along == "s" ? "z" : along == "z" ? "s" : along == "x" ? "y" : "x";
}

} // namespace

std::string trace_place_text(const TraceView &view) {
  const std::string stretch = view.trace.closed
                                  ? fmt::format("all round, {}", mm_text(view.length_mm()))
                                  : fmt::format("from {} = {} to {}", view.trace.along,
                                                fixed_text(view.low_mm(), 3), mm_text(view.high_mm()));
  return fmt::format("{} at {} = {}, {}", direction_text(view), other_axis(view.trace.along),
                     mm_text(view.trace.at_mm), stretch);
}

std::string cutoff_choice_text(const TraceView &view) {
  if (view.request.cutoff_mm)
    return "as asked";
  return "the longer of what ISO 4288:1996 gives for the marks' distance and for Ra";
}

std::string evaluation_text(const TraceView &view) {
  const MeasuringSettings &settings = view.trace.reading.settings;
  const int sections = view.trace.reading.fit.sections;
  if (sections <= 0)
    return fmt::format("the whole {:.4g} mm as one short section", view.length_mm());
  return fmt::format("{} of {:g} mm = {:g} mm",
                     count_text(static_cast<std::size_t>(sections), "section", "sections"),
                     settings.cutoff_mm, settings.cutoff_mm * sections);
}

std::vector<std::string> trace_warnings(const TraceView &view) {
  const StylusReading &reading = view.trace.reading;
  std::vector<std::string> warnings;
  if (view.request.length_mm && *view.request.length_mm > view.length_mm() + 2.0 * view.trace.spacing_mm)
    warnings.push_back(
        fmt::format("{:g} mm were asked for and the feature holds {:.4g} mm: that much was read.",
                    *view.request.length_mm, view.length_mm()));
  if (view.trace.along == "s" && !view.request.length_mm && !view.trace.closed)
    warnings.push_back(
        fmt::format("The outline is too long to be traced all round at this spacing: {:.4g} mm from "
                    "s = 0 were read. Ask for another stretch by its begin and length.",
                    view.length_mm()));
  if (reading.fit.too_short()) {
    const double dropped = 2.0 * reading.fit.dropped_mm;
    warnings.push_back(fmt::format(
        "The trace is too short for {} sections of {:g} mm{}: the numbers stand on {} and are no full "
        "reading. "
        "Ask for a longer trace or a shorter cutoff.",
        reading.fit.wanted_sections, reading.settings.cutoff_mm,
        dropped > 0.0 ? fmt::format(" ({:g} mm go at each end for the filter to settle)", 0.5 * dropped) : "",
        reading.fit.sections > 0
            ? count_text(static_cast<std::size_t>(reading.fit.sections), "section", "sections")
            : "less than one"));
  }
  if (reading.spacing_coarse)
    warnings.push_back(
        fmt::format("Points lie {:.2g} um apart, the standard allows {:g} um with this cutoff: "
                    "detail finer than that is not read.",
                    um_from_mm(view.trace.spacing_mm), um_from_mm(reading.settings.point_spacing_mm)));
  for (const LineShare &share : line_shares(view))
    if (share.line == 0)
      warnings.push_back(fmt::format("{}% of the trace is not cut; there the blank's own surface is read.",
                                     share.share < 0.001 ? "Under 0.1" : fixed_text(100.0 * share.share, 1)));
  return warnings;
}

RaBand trace_ra_band(const TraceView &view) {
  return ra_band(um_from_mm(view.trace.reading.parameters.ra_mm),
                 {view.job.material.own_ra_low_um, view.job.material.own_ra_high_um});
}

bool is_ra_met(const TraceView &view) {
  const std::optional<double> &wanted = finish_of(view.feature).ra_um;
  return !wanted || trace_ra_band(view).high_um <= *wanted;
}

std::string fine_um_text(double um) {
  if (!std::isfinite(um))
    return "unknown";
  constexpr double kLeastShown_um = 5e-5;
  const double size = std::abs(um);
  return fixed_text(um, size >= 10.0 ? 1 : size >= 0.1 || size < kLeastShown_um ? 2 : 4) + " um";
}

} // namespace asperity
