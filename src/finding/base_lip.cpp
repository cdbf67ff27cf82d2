// Finds the lip left standing at the foot of a wall, and measures it to the micrometre.
#include "base_lip.h"

#include "line_tally.h"
#include "lip_probe.h"
#include "wall_reference.h"
#include "wording.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Lips lower than this are not reported [mm].
constexpr double kLeastHeight_mm = 0.002;
/// Places round the wall that are swept finely.
constexpr std::size_t kProbes = 24;

/// One wall with what the lip is measured against.
struct LipScene {
  const Evidence &evidence;
  const WallFeature &wall;
  const WallChart &chart;
  WallReference reference;
  const BaseRows &base = reference.base;

  bool is_known(std::size_t column) const { return base.first_clean[column] != BaseRows::kNone; }
  bool has_lip(std::size_t column) const { return is_known(column) && base.first_clean[column] > 0; }
  /// Height of the lip as far as rows can tell [mm above the wall's bottom].
  double row_height_mm(std::size_t column) const {
    return has_lip(column) ? row_bottom_mm(chart, base.first_clean[column]) - wall.z_bottom_mm : 0.0;
  }
};

/// Columns to sweep finely: spread evenly over those wanted, with the highest lip among them.
std::vector<std::size_t> probe_columns(const LipScene &scene, bool with_lip) {
  std::vector<std::size_t> wanted, chosen;
  for (std::size_t i = 0; i < scene.chart.columns(); ++i)
    if (scene.is_known(i) && scene.has_lip(i) == with_lip)
      wanted.push_back(i);
  if (wanted.empty())
    return chosen;
  for (std::size_t k = 0; k < std::min(kProbes, wanted.size()); ++k)
    chosen.push_back(wanted[k * wanted.size() / std::min(kProbes, wanted.size())]);
  chosen.push_back(*std::max_element(wanted.begin(), wanted.end(), [&](std::size_t a, std::size_t b) {
    return scene.base.first_clean[a] < scene.base.first_clean[b];
  }));
  return chosen;
}

std::optional<BaseEdge> edge_at(const LipScene &scene, std::size_t column) {
  const SweptPath &path = scene.evidence.cut.swept;
  if (path.pieces.empty())
    return std::nullopt;
  ProbeRange range;
  range.z_low_mm = scene.wall.z_bottom_mm;
  range.z_high_mm = scene.chart.z_mm[scene.base.first_clean[column]];
  if (range.z_high_mm <= range.z_low_mm)
    return std::nullopt;
  range.proud_limit_mm = scene.reference.at(column, range.z_high_mm) + scene.base.least_proud_mm;
  return probe_base(scene.chart, path, column, range);
}

/// Corner radius (height of the corner arc) and tip height of the piece that made the wall just above the
/// lip.
void note_maker(const LipScene &scene, std::size_t column, BaseLip &lip) {
  const std::uint32_t owner = scene.chart.owner[scene.chart.at(column, scene.base.first_clean[column])];
  if (owner >= scene.evidence.path.pieces.size())
    return;
  const PathPiece &piece = scene.evidence.path.pieces[owner];
  lip.deepest_tip_z_mm = std::min(piece.curve.begin.z, piece.curve.end.z);
  if (const Cutter *cutter = scene.evidence.job.cutter(piece.tool)) {
    const CutterProfile profile = cutter->profile();
    lip.cutter_corner_mm = profile.corner_mm() * (1.0 - std::sin(profile.cone_half_angle_rad()));
  }
}

/// How far the lip stands beyond the cut wall above it: its largest, over the rows of the lip.
double stands_out(const LipScene &scene, std::size_t column) {
  const std::size_t clean = scene.base.first_clean[column];
  const double above = scene.chart.residual_mm(scene.chart.at(column, clean));
  double most = scene.chart.residual_mm(scene.chart.at(column, 0)) - above;
  for (std::size_t j = 1; j < clean; ++j)
    most = std::max(most, scene.chart.residual_mm(scene.chart.at(column, j)) - above);
  return std::min(most, 2.0 * scene.chart.band_mm);
}

/// Takes the column's lip into account if it is the highest or lowest so far.
void take_column(const LipScene &scene, std::size_t column, BaseLip &lip) {
  BaseLip here;
  here.column = column;
  here.height_mm = here.unreached_mm = scene.row_height_mm(column);
  here.deepest_tip_z_mm = scene.wall.z_bottom_mm + here.height_mm;
  note_maker(scene, column, here);
  if (const std::optional<BaseEdge> edge = edge_at(scene, column)) {
    here.height_mm = edge->clean_mm - scene.wall.z_bottom_mm;
    here.unreached_mm = edge->reached_mm - scene.wall.z_bottom_mm;
    if (here.unreached_mm > 0.0)
      here.deepest_tip_z_mm = edge->reached_mm;
  }
  // A fillet meets the wall so flatly that its end is the corner's own height, not a measured edge.
  if (here.cutter_corner_mm > 0.0 && here.height_mm > here.unreached_mm + kProbeStep_mm)
    here.height_mm =
        std::max(here.height_mm, here.deepest_tip_z_mm + here.cutter_corner_mm - scene.wall.z_bottom_mm);
  here.stands_out_mm = stands_out(scene, column);
  const double least = lip.height_mm > 0.0 ? std::min(lip.least_height_mm, here.height_mm) : here.height_mm;
  if (here.height_mm > lip.height_mm)
    lip = here;
  lip.least_height_mm = least;
}

/// Stretches of lip columns round the closed outline.
void note_extent(const LipScene &scene, BaseLip &lip) {
  const std::size_t n = scene.chart.columns();
  std::size_t known = 0, with_lip = 0, longest = 0;
  for (std::size_t i = 0; i < n; ++i) {
    known += scene.is_known(i) ? 1 : 0;
    with_lip += scene.has_lip(i) ? 1 : 0;
    if (!scene.has_lip(i) || scene.has_lip((i + n - 1) % n))
      continue;
    ++lip.stretches;
    std::size_t length = 1;
    while (scene.has_lip((i + length) % n))
      ++length;
    if (length > longest) {
      longest = length;
      lip.stretch_first = i;
      lip.stretch_last = (i + length - 1) % n;
    }
  }
  lip.share = static_cast<double>(with_lip) / static_cast<double>(std::max<std::size_t>(1, known));
}

/// Lips too low for any row: the base itself is swept at a few places. Returns the share of places with a
/// lip.
double probe_below_rows(const LipScene &scene, BaseLip &lip) {
  const std::vector<std::size_t> columns = probe_columns(scene, false);
  std::size_t found = 0;
  for (const std::size_t column : columns) {
    const bool stock = scene.chart.blank_mm[scene.chart.at(column, 0)] >
                       scene.reference.at(column, scene.chart.z_mm[0]) + scene.base.least_edge_mm;
    const std::optional<BaseEdge> edge = stock ? edge_at(scene, column) : std::nullopt;
    if (!edge || edge->clean_mm - scene.wall.z_bottom_mm < kLeastHeight_mm)
      continue;
    ++found;
    const double before = lip.height_mm;
    take_column(scene, column, lip);
    if (lip.height_mm > before)
      lip.stands_out_mm =
          std::min<double>(scene.chart.blank_mm[scene.chart.at(column, 0)], scene.chart.band_mm) -
          scene.chart.residual_mm(scene.chart.at(column, 0));
  }
  return columns.empty() ? 0.0 : static_cast<double>(found) / static_cast<double>(columns.size());
}

Found found_lip(const LipScene &scene, int feature, const BaseLip &lip) {
  Found found;
  Finding &finding = found.finding;
  const double limit = scene.wall.finish.lip_mm.value_or(kLipLimit_mm);
  found.excess = lip.height_mm / std::max(limit, 1e-3);
  finding.kind = FindingKind::base_lip;
  finding.weight = lip.height_mm > limit ? Weight::flaw : Weight::note;
  finding.feature = feature;
  finding.place_mm = place_on(scene.chart, lip.column, scene.wall.z_bottom_mm);
  finding.where = lip_where(scene.wall, scene.chart, lip);
  finding.size = {{"height", lip.height_mm, "mm"},
                  {"stands out", lip.stands_out_mm, "mm"},
                  {"share of the outline", 100.0 * lip.share, "%"}};
  if (lip.height_mm - lip.least_height_mm > 0.001)
    finding.size.push_back({"lowest height", lip.least_height_mm, "mm"});
  finding.cause = lip_cause(lip);
  finding.remedy = lip_remedy(scene.evidence.job, scene.wall, lip);
  LineTally lines;
  for (std::size_t i = 0; i < scene.chart.columns(); ++i)
    if (scene.has_lip(i) || i == lip.column)
      lines.add_owner(scene.evidence.path, scene.chart.owner[scene.chart.at(i, scene.base.first_clean[i])]);
  lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_base_lips(const Evidence &evidence) {
  FoundList all;
  for_each_wall(evidence, [&](int feature, const WallFeature &wall, const WallChart &chart) {
    LipScene scene{evidence, wall, chart, reference_on(evidence, feature, chart)};
    if (!scene.reference.usable)
      return;
    BaseLip lip;
    for (const std::size_t column : probe_columns(scene, true))
      take_column(scene, column, lip);
    note_extent(scene, lip);
    if (lip.share < 1.0)
      lip.share += (1.0 - lip.share) * probe_below_rows(scene, lip);
    if (lip.height_mm >= kLeastHeight_mm)
      all.push_back(found_lip(scene, feature, lip));
  });
  return all;
}

} // namespace asperity
