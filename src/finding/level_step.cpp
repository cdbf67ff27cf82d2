// Finds horizontal steps in a wall where one level's cut meets the next.
#include "found.h"
#include "line_tally.h"
#include "visibility.h"
#include "wall_reference.h"
#include "wording.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// A jump must exceed the usual row-to-row change by this many robust deviations.
constexpr double kClearJump = 5.0;
/// Columns that must be cut in both rows, as a share.
constexpr double kLeastShare = 0.5;
/// Rows to either side from which the usual change per row is taken.
constexpr std::size_t kSlopeRows = 5;

struct LevelStep {
  std::size_t lower_row = 0; ///< the step lies between this row and the next
  double size_mm = 0;        ///< e below minus e above: positive = the wall below stands out
};

/// Median over the columns of e[row + 1] - e[row]; NaN where too few are cut in both.
double row_change(const WallChart &chart, const BaseRows &base, std::size_t row) {
  std::vector<double> changes;
  for (std::size_t i = 0; i < chart.columns(); ++i) {
    const std::size_t low = chart.at(i, row), high = chart.at(i, row + 1);
    if (base.first_clean[i] != BaseRows::kNone && row >= base.first_clean[i] && chart.is_cut(low) &&
        chart.is_cut(high))
      changes.push_back(static_cast<double>(chart.envelope_mm[high]) - chart.envelope_mm[low]);
  }
  if (static_cast<double>(changes.size()) < kLeastShare * static_cast<double>(chart.columns()))
    return std::numeric_limits<double>::quiet_NaN();
  return median_of(changes);
}

/// The change to expect at `row` from its neighbours.
double usual_change(const std::vector<double> &changes, std::size_t row) {
  std::vector<double> near;
  const std::size_t first = row > kSlopeRows ? row - kSlopeRows : 0;
  for (std::size_t j = first; j < std::min(changes.size(), row + kSlopeRows + 1); ++j)
    if (j != row && !std::isnan(changes[j]))
      near.push_back(changes[j]);
  return near.empty() ? 0.0 : median_of(near);
}

std::vector<LevelStep> level_steps(const WallChart &chart, const BaseRows &base) {
  std::vector<double> changes;
  for (std::size_t j = 0; j + 1 < chart.rows(); ++j)
    changes.push_back(row_change(chart, base, j));
  std::vector<double> jumps, known;
  for (std::size_t j = 0; j < changes.size(); ++j) {
    jumps.push_back(changes[j] - usual_change(changes, j));
    if (!std::isnan(jumps[j]))
      known.push_back(jumps[j]);
  }
  const double threshold = std::max(kLeastMark_mm, kClearJump * robust_deviation(known));
  std::vector<LevelStep> steps;
  for (std::size_t j = 0; j < jumps.size(); ++j)
    if (std::abs(jumps[j]) > threshold)
      steps.push_back({j, -jumps[j]});
  return steps;
}

std::string where_words(const WallChart &chart, const std::vector<LevelStep> &steps,
                        const LevelStep &largest) {
  const double z = row_top_mm(chart, largest.lower_row);
  if (steps.size() == 1)
    return fmt::format("all round the wall at z {:.2f} mm", z);
  return fmt::format(
      "{} steps all round the wall, {}, largest at z {:.2f} mm", steps.size(),
      words_z(row_top_mm(chart, steps.front().lower_row), row_top_mm(chart, steps.back().lower_row)), z);
}

Found found_steps(const Evidence &evidence, int feature, const WallFeature &wall, const WallChart &chart,
                  const std::vector<LevelStep> &steps) {
  const LevelStep largest = *std::max_element(steps.begin(), steps.end(), [](const auto &a, const auto &b) {
    return std::abs(a.size_mm) < std::abs(b.size_mm);
  });
  Found found;
  Finding &finding = found.finding;
  const double size_um = um_from_mm(std::abs(largest.size_mm));
  const double limit_um = wall.finish.witness_depth_um.value_or(um_from_mm(kVisibleMark_mm));
  found.excess = size_um / std::max(limit_um, 1e-2);
  finding.kind = FindingKind::level_step;
  finding.weight = wall.finish.witness_depth_um && size_um > limit_um ? Weight::flaw : Weight::note;
  finding.feature = feature;
  finding.place_mm = place_on(chart, 0, row_top_mm(chart, largest.lower_row));
  finding.where = where_words(chart, steps, largest);
  finding.size = {{"step", size_um, "um"},
                  {"height", row_top_mm(chart, largest.lower_row), "mm"},
                  {"steps", static_cast<double>(steps.size()), ""}};
  finding.cause =
      largest.size_mm < 0.0
          ? "Each level is cut by a bent cutter, and it bends most at its tip: the foot of the upper "
            "level stands out over the level below."
          : "The level below was cut with more bending than the one above, so the wall below stands out.";
  finding.remedy =
      "Finish the wall in one pass at full depth, or take a lighter finishing pass at every level; a "
      "shorter, thicker cutter bends less.";
  add_visibility(finding, step_slope_um_per_mm(chart, largest.lower_row), size_um, wall.finish);
  finding.rests_on = bending_rests_on(evidence.job);
  LineTally lines;
  for (const LevelStep &step : steps)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      lines.add_owner(evidence.path, chart.owner[chart.at(i, step.lower_row)]);
      lines.add_owner(evidence.path, chart.owner[chart.at(i, step.lower_row + 1)]);
    }
  lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_level_steps(const Evidence &evidence) {
  FoundList all;
  for_each_wall(evidence, [&](int feature, const WallFeature &wall, const WallChart &chart) {
    const WallReference reference = reference_on(evidence, feature, chart);
    if (!reference.usable)
      return;
    const std::vector<LevelStep> steps = level_steps(chart, reference.base);
    if (!steps.empty())
      all.push_back(found_steps(evidence, feature, wall, chart, steps));
  });
  return all;
}

} // namespace asperity
