// Finds places cut deeper than the job allows.
#include "line_tally.h"
#include "surface_view.h"

#include "wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// A gouge over more than this share of the surface is no accident of one move.
constexpr double kWholeShare = 0.5;

double per_side(const std::optional<SizeWanted> &size, double actual_mm, bool inside) {
  if (!size)
    return kGougeLimit_mm;
  return 0.5 * (inside ? size->upper_mm - actual_mm : actual_mm - size->lower_mm);
}

double limit_of(const WallFeature &wall) {
  const bool inside = wall.side == Side::inside;
  switch (wall.kind) {
  case OutlineKind::circle:
    return per_side(wall.size[0], wall.diameter_mm, inside);
  case OutlineKind::rounded_rectangle:
    return std::min(per_side(wall.size[0], wall.width_mm.x, inside),
                    per_side(wall.size[1], wall.width_mm.y, inside));
  case OutlineKind::free_form:
    break;
  }
  return wall.size[0] ? -wall.size[0]->lower_mm : kGougeLimit_mm;
}

double limit_of(const FloorFeature &floor) {
  return floor.height ? floor.z_mm - floor.measured_from_z_mm - floor.height->lower_mm : kGougeLimit_mm;
}

/// The rim has no height wanted of it; the apex's limit is taken for the whole dome.
double limit_of(const DomeFeature &dome) {
  return dome.height && !dome.surface ? dome.apex_z_mm - dome.measured_from_z_mm - dome.height->lower_mm
                                      : kGougeLimit_mm;
}

/// How far below the wanted surface a cell may lie [mm]. Limits that leave no room below it say nothing about
/// gouges.
double gouge_limit_mm(const Feature &feature) {
  const double limit = std::visit([](const auto &one) { return limit_of(one); }, feature);
  return limit > 1e-6 ? limit : kGougeLimit_mm;
}

struct GougeCells {
  std::vector<bool> marked;
  std::size_t count = 0, cut = 0, deepest = 0;
  double depth_mm = 0;
};

GougeCells gouge_cells(const SurfaceView &view, double limit_mm) {
  GougeCells gouge;
  gouge.marked.assign(view.cells(), false);
  for (std::size_t cell = 0; cell < view.cells(); ++cell) {
    if (!view.in_feature(cell) || !view.is_cut(cell))
      continue;
    ++gouge.cut;
    // A float just over the limit by rounding is not a gouge.
    const double depth = -static_cast<double>((*view.envelope_mm)[cell]);
    if (depth <= limit_mm + 1e-6)
      continue;
    gouge.marked[cell] = true;
    ++gouge.count;
    if (depth > gouge.depth_mm) {
      gouge.depth_mm = depth;
      gouge.deepest = cell;
    }
  }
  return gouge;
}

void write_cause(Finding &finding, const GougeCells &gouge, double limit_mm, std::uint32_t line) {
  if (static_cast<double>(gouge.count) > kWholeShare * static_cast<double>(gouge.cut)) {
    finding.cause =
        fmt::format("Most of the surface is cut up to {:.3f} mm below what is wanted ({:.3f} mm allowed): "
                    "a shift, such as a zero error or a cutter larger than believed.",
                    gouge.depth_mm, limit_mm);
    finding.remedy = "Check zero, cutter diameter, runout and the offset in the program.";
    return;
  }
  finding.cause =
      fmt::format("{} runs up to {:.3f} mm inside the wanted surface ({:.3f} mm allowed).",
                  line > 0 ? fmt::format("The move in line {}", line) : "A move", gouge.depth_mm, limit_mm);
  finding.remedy = "Correct that move, or its approach and exit; check the cutter number and the arc centre.";
}

Found found_gouge(const Evidence &evidence, const SurfaceView &view, const GougeCells &gouge,
                  double limit_mm) {
  Found found;
  Finding &finding = found.finding;
  const std::vector<Patch> patches = patches_of(gouge.marked, view.columns, view.wraps);
  const auto deepest = std::find_if(patches.begin(), patches.end(), [&](const Patch &patch) {
    return patch.holds(gouge.deepest / view.columns, gouge.deepest % view.columns);
  });
  found.excess = gouge.depth_mm / limit_mm;
  finding.kind = FindingKind::gouge;
  finding.weight = Weight::flaw;
  finding.feature = view.feature;
  finding.place_mm = view.place_mm(gouge.deepest);
  finding.where = view.where(*deepest);
  if (patches.size() > 1)
    finding.where += fmt::format(" (the deepest of {} places)", patches.size());
  finding.size = {{"depth", gouge.depth_mm, "mm"},
                  {"share of the cut surface", 100.0 * double(gouge.count) / double(gouge.cut), "%"}};
  const std::uint32_t owner = (*view.owner)[gouge.deepest];
  write_cause(finding, gouge, limit_mm,
              owner < evidence.path.pieces.size() ? evidence.path.pieces[owner].line : 0);
  // A gouge far deeper than bending could be is geometry; a shallow one may well be bending.
  if (gouge.depth_mm < 2.0 * limit_mm)
    finding.rests_on = bending_rests_on(evidence.job);
  LineTally lines;
  for (std::size_t cell = 0; cell < view.cells(); ++cell)
    if (gouge.marked[cell])
      lines.add_owner(evidence.path, (*view.owner)[cell], -double((*view.envelope_mm)[cell]));
  lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_gouges(const Evidence &evidence) {
  FoundList all;
  for (const SurfaceView &view : surface_views(evidence)) {
    const double limit = gouge_limit_mm(evidence.job.features[static_cast<std::size_t>(view.feature)]);
    const GougeCells gouge = gouge_cells(view, limit);
    if (gouge.count > 0)
      all.push_back(found_gouge(evidence, view, gouge, limit));
  }
  return all;
}

} // namespace asperity
