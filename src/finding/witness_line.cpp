// Finds grooves and ridges that run up a wall, names what made them, and merges those that repeat.
#include "found.h"
#include "groove_lines.h"
#include "line_cause.h"
#include "line_tally.h"
#include "visibility.h"
#include "wall_reference.h"
#include "wording.h"

#include "asperity/base/units.h"
#include "asperity/cut/scallop.h"
#include "asperity/cut/walk.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace asperity {

namespace {

/// Width of the moving median in cutter diameters: wider than any groove, narrower than what the outline
/// does.
constexpr double kWindowDiameters = 3.0;
/// Lines of one sort reported one by one; the rest goes into one finding.
constexpr std::size_t kMostSingle = 8;
/// From this many on, lines of one sort at even distances are one finding.
constexpr std::size_t kLeastRepeated = 6;
/// Distances count as even when their robust deviation is below this share of their median.
constexpr double kEvenShare = 0.15;
/// A line at a joint of straight moves is at most so many facets deep.
constexpr double kFacets = 2.0;
/// A plunge's line is named before those of the cells' owners.
constexpr double kPlungeWeight = 1e9;

/// A line with its cause.
struct NamedLine {
  GrooveLine line;
  LineCause cause = LineCause::unknown;
  std::size_t levels = 0;
  std::vector<std::uint32_t> plunges; ///< program lines of plunges that stand at this place
};

struct LineScene {
  const Evidence &evidence;
  int feature;
  const WallFeature &wall;
  const WallChart &chart;
  double cutter_diameter_mm;
  std::vector<double> levels_mm; ///< of the path, rising
};

/// Diameter of the cutter that made most of the wall's middle row; the first cutter's if the path does not
/// say.
double cutter_diameter_mm(const Evidence &evidence, const WallChart &chart) {
  std::map<int, std::size_t> tools;
  for (std::size_t i = 0; i < chart.columns(); ++i)
    if (const std::uint32_t owner = chart.owner[chart.at(i, chart.rows() / 2)];
        owner < evidence.path.pieces.size())
      ++tools[evidence.path.pieces[owner].tool];
  const auto most = std::max_element(tools.begin(), tools.end(),
                                     [](const auto &a, const auto &b) { return a.second < b.second; });
  const Cutter *cutter = most == tools.end() ? nullptr : evidence.job.cutter(most->first);
  if (!cutter && !evidence.job.cutters.empty())
    cutter = &evidence.job.cutters.front();
  return cutter ? cutter->diameter_mm : 6.0;
}

/// Levels of the path over which the line runs: a level reaches from its tip up to the next one's.
std::size_t levels_crossed(const LineScene &scene, const GrooveLine &line) {
  constexpr double kLeastOverlap_mm = 0.1;
  const double low = row_bottom_mm(scene.chart, line.first_row),
               high = row_top_mm(scene.chart, line.last_row);
  std::size_t crossed = 0;
  for (std::size_t i = 0; i < scene.levels_mm.size(); ++i) {
    const double top = i + 1 < scene.levels_mm.size() ? scene.levels_mm[i + 1] : high;
    if (std::min(top, high) - std::max(scene.levels_mm[i], low) > kLeastOverlap_mm)
      ++crossed;
  }
  return crossed;
}

/// Program lines of the plunges that come down beside the wall at this line, within a standing cutter's
/// groove.
std::vector<std::uint32_t> plunges_at(const LineScene &scene, const GrooveLine &line) {
  const double radius = 0.5 * scene.cutter_diameter_mm;
  const Vec2 contact = scene.chart.foot[line.column] + radius * scene.chart.normal[line.column];
  const double near_mm = std::max(witness_width_mm(scene.cutter_diameter_mm, line.depth_mm), 0.1 * radius);
  const double low = row_bottom_mm(scene.chart, line.first_row),
               high = row_top_mm(scene.chart, line.last_row);
  std::vector<std::uint32_t> lines;
  for (const PathPiece &piece : scene.evidence.path.pieces)
    if (piece.kind == MoveKind::feed && goes_down(piece) && piece.curve.end.z < high &&
        piece.curve.begin.z > low && glm::length(plan(piece.curve.end) - contact) < near_mm)
      lines.push_back(piece.line);
  return lines;
}

/// The cause most rows agree on, and how many levels share the line. A plunge at the place explains it
/// whatever the cutter does there next: the plunge of each level stands unbent beside the whole wall above
/// it.

NamedLine name_line(const LineScene &scene, GrooveLine line) {
  const Job &job = scene.evidence.job;
  const Vec2 backlash_mm = job.effects.backlash ? plan(job.machine.backlash_mm) : Vec2(0.0);
  NamedLine named;
  std::map<LineCause, std::size_t> votes;
  std::set<long long> tips;
  for (const std::size_t cell : line.cells) {
    const std::uint32_t owner = scene.chart.owner[cell];
    if (owner >= scene.evidence.path.pieces.size())
      continue;
    const LineCause cause =
        line_cause(scene.evidence.path, owner, scene.chart.foot[cell % scene.chart.columns()], backlash_mm);
    // A joint explains no more than the facets beside it.
    const bool explained =
        cause != LineCause::joint || line.depth_mm < kFacets * facet_height_mm(scene.evidence.path, owner);
    if (cause != LineCause::unknown && explained)
      ++votes[cause];
    const Curve &curve = scene.evidence.path.pieces[owner].curve;
    tips.insert(std::llround(std::min(curve.begin.z, curve.end.z) * 1e3));
  }
  const auto most = std::max_element(votes.begin(), votes.end(),
                                     [](const auto &a, const auto &b) { return a.second < b.second; });
  if (most != votes.end())
    named.cause = most->first;
  named.levels = std::max(tips.size(), levels_crossed(scene, line));
  if (!line.ridge)
    named.plunges = plunges_at(scene, line);
  if (!named.plunges.empty())
    named.cause = LineCause::plunge;
  named.line = std::move(line);
  return named;
}

Found found_line(const LineScene &scene, const NamedLine &named) {
  const GrooveLine &line = named.line;
  Found found;
  Finding &finding = found.finding;
  const FinishWanted &finish = scene.wall.finish;
  const double limit_mm = finish.witness_depth_um ? mm_from_um(*finish.witness_depth_um) : kVisibleMark_mm;
  found.excess = line.depth_mm / std::max(limit_mm, 1e-5);
  finding.kind = FindingKind::witness_line;
  finding.weight = finish.witness_depth_um && line.depth_mm > limit_mm ? Weight::flaw : Weight::note;
  finding.feature = scene.feature;
  finding.place_mm = place_on(scene.chart, line.column, scene.chart.z_mm[line.row]);
  finding.where = words_at(scene.wall, scene.chart, line.column) + ", " +
                  words_z(row_bottom_mm(scene.chart, line.first_row), row_top_mm(scene.chart, line.last_row));
  finding.size = {{line.ridge ? "height" : "depth", um_from_mm(line.depth_mm), "um"},
                  {"width", line.width_mm, "mm"}};
  if (!line.ridge)
    finding.size.push_back({"width of a standing cutter's groove",
                            witness_width_mm(scene.cutter_diameter_mm, line.depth_mm), "mm"});
  if (scene.wall.kind == OutlineKind::circle)
    finding.size.push_back({"angle", angle_deg(scene.wall, scene.chart, line.column), "deg"});
  finding.size.push_back({"along the outline", scene.chart.s_mm[line.column], "mm"});
  if (named.levels > 0)
    finding.size.push_back({"levels", static_cast<double>(named.levels), ""});
  finding.cause = cause_words(named.cause, line.ridge);
  finding.remedy = remedy_words(named.cause);
  add_visibility(finding, steepest_along_um_per_mm(scene.chart, line.column, line.row, line.width_mm),
                 um_from_mm(line.depth_mm), finish);
  finding.rests_on = named.cause == LineCause::joint ? "" : bending_rests_on(scene.evidence.job);
  LineTally lines;
  for (const std::size_t cell : line.cells)
    lines.add_owner(scene.evidence.path, scene.chart.owner[cell]);
  for (const std::uint32_t plunge : named.plunges)
    lines.add_line(plunge, kPlungeWeight);
  lines.write_to(finding);
  return found;
}

/// One finding for many lines: the strongest, with how many there are and how far apart if even.
Found found_many(const LineScene &scene, const std::vector<NamedLine> &group, double pitch_mm) {
  Found found = found_line(scene, group.front());
  Finding &finding = found.finding;
  double shallowest = group.front().line.depth_mm;
  LineTally lines;
  for (const NamedLine &named : group) {
    shallowest = std::min(shallowest, named.line.depth_mm);
    for (const std::size_t cell : named.line.cells)
      lines.add_owner(scene.evidence.path, scene.chart.owner[cell]);
  }
  lines.write_to(finding);
  finding.where = fmt::format(
      "{} lines, {}, deepest {}", group.size(),
      pitch_mm > 0.0 ? fmt::format("{:.2f} mm apart", pitch_mm) : "at uneven distances", finding.where);
  finding.size.push_back({"lines", static_cast<double>(group.size()), ""});
  finding.size.push_back({"shallowest", um_from_mm(shallowest), "um"});
  if (pitch_mm > 0.0)
    finding.size.push_back({"distance", pitch_mm, "mm"});
  return found;
}

/// Median distance between neighbouring lines [mm] if they stand evenly, else 0. A missing line does not
/// matter.
double even_pitch_mm(const WallChart &chart, const std::vector<NamedLine> &group) {
  std::vector<double> s, gaps;
  const double spacing = chart.columns() > 1 ? chart.s_mm[1] - chart.s_mm[0] : 1.0;
  for (const NamedLine &named : group)
    s.push_back(named.line.centre_column * spacing);
  std::sort(s.begin(), s.end());
  for (std::size_t k = 1; k < s.size(); ++k)
    gaps.push_back(s[k] - s[k - 1]);
  const double median = median_of(std::span<double>(gaps));
  return robust_deviation(gaps) <= std::max(kEvenShare * median, spacing) ? median : 0.0;
}

FoundList found_lines(const LineScene &scene, std::vector<GrooveLine> lines) {
  std::map<std::pair<LineCause, bool>, std::vector<NamedLine>> groups;
  for (GrooveLine &line : lines) {
    NamedLine named = name_line(scene, std::move(line));
    groups[{named.cause, named.line.ridge}].push_back(std::move(named));
  }
  FoundList all;
  for (auto &[sort, group] : groups) {
    const double pitch = group.size() >= kLeastRepeated ? even_pitch_mm(scene.chart, group) : 0.0;
    if (pitch > 0.0) {
      all.push_back(found_many(scene, group, pitch));
      continue;
    }
    const std::size_t single = group.size() > kMostSingle + 1 ? kMostSingle : group.size();
    for (std::size_t k = 0; k < single; ++k)
      all.push_back(found_line(scene, group[k]));
    if (single < group.size())
      all.push_back(
          found_many(scene, {group.begin() + static_cast<std::ptrdiff_t>(single), group.end()}, 0.0));
  }
  return all;
}

} // namespace

FoundList find_witness_lines(const Evidence &evidence) {
  FoundList all;
  for_each_wall(evidence, [&](int feature, const WallFeature &wall, const WallChart &chart) {
    const WallReference reference = reference_on(evidence, feature, chart);
    if (!reference.usable)
      return;
    const LineScene scene{
        evidence, feature, wall, chart, cutter_diameter_mm(evidence, chart), level_heights_mm(evidence.path)};
    FoundList here = found_lines(scene, groove_lines(chart, reference.base.first_clean,
                                                     kWindowDiameters * scene.cutter_diameter_mm,
                                                     kLeastMark_mm, evidence.threads));
    all.insert(all.end(), here.begin(), here.end());
  });
  return all;
}

} // namespace asperity
