// Finds the ridges that neighbouring passes of a rounded cutter leave on floors and domes.
//
// Upright walls have none: above its corner every cutter's side makes the wall, so what its tip leaves there
// is the fillet of the base lip.
#include "asperity/cut/scallop.h"
#include "found.h"
#include "line_tally.h"
#include "ridge.h"
#include "robust.h"
#include "surface_slope.h"
#include "wording.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <map>

namespace asperity {

namespace {

/// Profiles looked at along each axis.
constexpr std::size_t kProfiles = 101;
/// Ridges needed before anything is said.
constexpr std::size_t kLeastRidges = 8;
/// Ra over height of a row of parabolic cusps: 4/(9 sqrt 3). Derived.
const double kRaShare = 4.0 / (9.0 * std::sqrt(3.0));

/// Ridges met along all profiles of one axis.
struct AxisRidges {
  std::vector<double> heights_mm, gaps_mm;
  double highest_mm = 0;
  std::size_t highest_cell = 0;
  std::vector<std::size_t> cells;

  double height_mm() const {
    std::vector<double> copy = heights_mm;
    return heights_mm.size() < kLeastRidges ? 0.0 : median_of(std::span<double>(copy));
  }
  double pitch_mm() const {
    std::vector<double> copy = gaps_mm;
    return gaps_mm.empty() ? std::numeric_limits<double>::infinity() : median_of(std::span<double>(copy));
  }
};

/// Every how many lines a profile is taken, from half of that on.
std::vector<std::size_t> chosen_lines(std::size_t lines) {
  const std::size_t step = std::max<std::size_t>(1, lines / kProfiles);
  std::vector<std::size_t> chosen;
  for (std::size_t line = step / 2; line < lines; line += step)
    chosen.push_back(line);
  return chosen;
}

double height_on_normal_mm(const FloorChart &chart, std::size_t i, std::size_t j) {
  const std::size_t cell = chart.at(i, j);
  return chart.in_feature(cell) && chart.is_cut(cell) ? chart.envelope_mm[cell] * cos_slope(chart, i, j)
                                                      : std::numeric_limits<double>::quiet_NaN();
}

/// The chart's heights along the chosen rows or columns; read row by row, as a large chart lies on the disk.
std::vector<std::vector<double>> profiles_along(const FloorChart &chart, bool along_x,
                                                const std::vector<std::size_t> &lines) {
  std::vector<std::vector<double>> profiles(lines.size(), std::vector<double>(along_x ? chart.nx : chart.ny));
  if (along_x) {
    for (std::size_t n = 0; n < lines.size(); ++n)
      for (std::size_t i = 0; i < chart.nx; ++i)
        profiles[n][i] = height_on_normal_mm(chart, i, lines[n]);
  } else {
    for (std::size_t j = 0; j < chart.ny; ++j)
      for (std::size_t n = 0; n < lines.size(); ++n)
        profiles[n][j] = height_on_normal_mm(chart, lines[n], j);
  }
  return profiles;
}

AxisRidges ridges_along(const FloorChart &chart, bool along_x) {
  AxisRidges axis;
  const std::vector<std::size_t> lines = chosen_lines(along_x ? chart.ny : chart.nx);
  const std::vector<std::vector<double>> profiles = profiles_along(chart, along_x, lines);
  for (std::size_t n = 0; n < lines.size(); ++n) {
    const std::vector<Ridge> ridges = ridges_in(profiles[n], kLeastMark_mm);
    for (std::size_t k = 0; k < ridges.size(); ++k) {
      axis.heights_mm.push_back(ridges[k].height);
      axis.cells.push_back(along_x ? chart.at(ridges[k].at, lines[n]) : chart.at(lines[n], ridges[k].at));
      if (k > 0)
        axis.gaps_mm.push_back(static_cast<double>(ridges[k].at - ridges[k - 1].at) * chart.spacing_mm);
      if (ridges[k].height > axis.highest_mm) {
        axis.highest_mm = ridges[k].height;
        axis.highest_cell = axis.cells.back();
      }
    }
  }
  return axis;
}

/// Distance between passes square to the lay, from the distances seen along x and along y [mm].
double square_pitch_mm(const AxisRidges &strong, const AxisRidges &weak) {
  const double p = strong.pitch_mm();
  // Ridges that run slantwise are met along both axes, at full height.
  if (weak.height_mm() < 0.5 * strong.height_mm())
    return p;
  const double q = weak.pitch_mm();
  return 1.0 / std::sqrt(1.0 / (p * p) + 1.0 / (q * q));
}

/// The cutter that made most of the ridges.
const Cutter *maker_of(const Evidence &evidence, const FloorChart &chart, const AxisRidges &axis) {
  std::map<int, std::size_t> tools;
  for (const std::size_t cell : axis.cells)
    if (const std::uint32_t owner = chart.owner[cell]; owner < evidence.path.pieces.size())
      ++tools[evidence.path.pieces[owner].tool];
  const auto most = std::max_element(tools.begin(), tools.end(),
                                     [](const auto &a, const auto &b) { return a.second < b.second; });
  return most == tools.end() ? nullptr : evidence.job.cutter(most->first);
}

/// Height the cutter leaves on a level floor at this pitch; nothing for other cutters.
std::optional<double> expected_mm(const Cutter *cutter, double pitch_mm) {
  if (cutter && cutter->kind == CutterKind::ball)
    return ball_scallop_mm(0.5 * cutter->diameter_mm, pitch_mm);
  if (cutter && cutter->kind == CutterKind::corner_radius)
    return corner_radius_scallop_mm(cutter->diameter_mm, cutter->corner_radius_mm, pitch_mm);
  return std::nullopt;
}

/// A crest falls between cells: it is missed by up to half a cell times the crest's slope [mm].
double sampling_error_mm(const Cutter *cutter, double pitch_mm, double spacing_mm) {
  if (!cutter)
    return 0.0;
  const double r =
      cutter->kind == CutterKind::corner_radius ? cutter->corner_radius_mm : 0.5 * cutter->diameter_mm;
  const double flat = cutter->kind == CutterKind::corner_radius ? cutter->diameter_mm - 2.0 * r : 0.0;
  const double half = 0.5 * std::max(0.0, pitch_mm - flat);
  return half < r ? 0.5 * spacing_mm * half / std::sqrt(r * r - half * half) : 0.5 * spacing_mm;
}

Found found_scallops(const Evidence &evidence, int feature, const FloorChart &chart, const AxisRidges &axis,
                     double pitch_mm, const Cutter *cutter) {
  Found found;
  Finding &finding = found.finding;
  const FinishWanted &finish = finish_of(evidence.job.features[static_cast<std::size_t>(feature)]);
  const double height_um = um_from_mm(axis.height_mm()), ra_um = kRaShare * height_um;
  found.excess = finish.ra_um ? ra_um / std::max(*finish.ra_um, 1e-3) : axis.height_mm() / kLipLimit_mm;
  finding.kind = FindingKind::scallop;
  finding.weight = finish.ra_um && ra_um > *finish.ra_um ? Weight::flaw : Weight::note;
  finding.feature = feature;
  const std::size_t cell = axis.highest_cell;
  finding.place_mm = {chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx),
                      chart.base_mm + chart.wanted_mm[cell]};
  finding.where = fmt::format("between passes {:.3f} mm apart, highest at {}", pitch_mm,
                              words_xy(plan(finding.place_mm)));
  finding.size = {
      {"height", height_um, "um"},
      {"highest", um_from_mm(axis.highest_mm), "um"},
      {"distance", pitch_mm, "mm"},
      {"Ra of the ridges alone", ra_um, "um"},
      {"sampling error", um_from_mm(sampling_error_mm(cutter, pitch_mm, chart.spacing_mm)), "um"}};
  const bool level =
      std::holds_alternative<FloorFeature>(evidence.job.features[static_cast<std::size_t>(feature)]);
  if (const auto expected = expected_mm(cutter, pitch_mm); expected && level)
    finding.size.push_back({"height by formula", um_from_mm(*expected), "um"});
  finding.cause = "The rounded cutter leaves a ridge between neighbouring passes.";
  finding.remedy = "Halving the stepover makes the ridges about four times lower; a larger cutter helps too.";
  if (cutter && (cutter->kind == CutterKind::flat || cutter->kind == CutterKind::v)) {
    finding.cause = "A sharp-cornered cutter leaves stairs on a slope.";
    finding.remedy = "Finish slopes with a ball or corner-radius cutter, or take smaller steps.";
  }
  LineTally lines;
  for (const std::size_t crest : axis.cells)
    lines.add_owner(evidence.path, chart.owner[crest]);
  lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_scallops(const Evidence &evidence) {
  FoundList all;
  for_each_floor(evidence, [&](int feature, const Feature &what, const FloorChart &chart) {
    const AxisRidges x = ridges_along(chart, true), y = ridges_along(chart, false);
    const bool across_x = x.height_mm() > y.height_mm() ||
                          (x.height_mm() == y.height_mm() && x.heights_mm.size() >= y.heights_mm.size());
    const AxisRidges &strong = across_x ? x : y;
    if (strong.height_mm() <= 0.0)
      return;
    // On a level floor a flat cutter leaves steps from bending, not scallops.
    const Cutter *cutter = maker_of(evidence, chart, strong);
    if (std::holds_alternative<FloorFeature>(what) && cutter &&
        (cutter->kind == CutterKind::flat || cutter->kind == CutterKind::v))
      return;
    all.push_back(
        found_scallops(evidence, feature, chart, strong, square_pitch_mm(strong, across_x ? y : x), cutter));
  });
  return all;
}

} // namespace asperity
