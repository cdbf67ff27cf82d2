#include "wanted_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Largest leading quantity among a feature's findings of the given kinds; 0 where there is none.
double largest(const Outcome &outcome, int feature, std::initializer_list<FindingKind> kinds) {
  double most = 0.0;
  for (const Finding &finding : outcome.findings)
    if (finding.feature == feature && !finding.size.empty() &&
        std::find(kinds.begin(), kinds.end(), finding.kind) != kinds.end())
      most = std::max(most, std::abs(finding.size.front().value));
  return most;
}

void check_sizes(std::vector<WantedCheck> &checks, const std::string &name, const FeatureResult &result) {
  for (const SizeMeasure &size : result.sizes) {
    if (!size.wanted)
      continue;
    checks.push_back(
        {name, size.what, fmt::format("{:.3f} to {:.3f} mm", size.wanted->lower_mm, size.wanted->upper_mm),
         size.verdict == Verdict::not_measured ? std::numeric_limits<double>::quiet_NaN() : size.mean_mm,
         "mm", size.verdict == Verdict::met});
  }
}

} // namespace

std::vector<WantedCheck> wanted_checks(const Outcome &outcome, bool with_roughness) {
  std::vector<WantedCheck> checks;
  for (std::size_t i = 0; i < outcome.job.features.size(); ++i) {
    const Feature &feature = outcome.job.features[i];
    const FinishWanted &finish = finish_of(feature);
    check_sizes(checks, name_of(feature), outcome.features[i]);
    const bool reached = outcome.features[i].cut_share > 0.0;
    const auto at_most = [&](const char *what, double limit, const char *unit, double found) {
      // Where no pass reaches the feature there is nothing to judge, and nothing is met.
      const double predicted = reached ? found : std::numeric_limits<double>::quiet_NaN();
      checks.push_back({name_of(feature), what, fmt::format("at most {} {}", limit, unit), predicted, unit,
                        predicted <= limit});
    };
    const int index = static_cast<int>(i);
    if (finish.ra_um && with_roughness)
      at_most("Ra, upper end of its band", *finish.ra_um, "um", outcome.roughness[i].ra_band.high_um);
    if (finish.lip_mm)
      at_most("lip height", *finish.lip_mm, "mm", largest(outcome, index, {FindingKind::base_lip}));
    if (finish.witness_depth_um)
      at_most("witness depth", *finish.witness_depth_um, "um",
              largest(outcome, index, {FindingKind::witness_line, FindingKind::level_step}));
  }
  return checks;
}

std::vector<std::string> honest_notes(const Outcome &outcome, bool with_roughness) {
  const Job &job = outcome.job;
  std::vector<std::string> notes{"Shape and size come from geometry and elastic bending. Tearing, chatter, "
                                 "built-up edge, melting and voids come "
                                 "on top and are not predicted."};
  if (!job.material.calibrated)
    notes.push_back(
        fmt::format("Force coefficients of {} are table values, not calibrated on your machine: forces and "
                    "bending may be off by half or more.",
                    job.material.name));
  const bool left_hand =
      std::any_of(outcome.path.pieces.begin(), outcome.path.pieces.end(),
                  [](const PathPiece &p) { return p.turn == SpindleTurn::counter_clockwise; });
  if (left_hand)
    notes.push_back(
        "The program turns the spindle counter-clockwise (M4): forces are worked out for clockwise.");
  const bool wants_ra = std::any_of(job.features.begin(), job.features.end(),
                                    [](const Feature &f) { return finish_of(f).ra_um.has_value(); });
  if (wants_ra && !with_roughness)
    notes.push_back("Roughness was left out of this run: wanted Ra is not checked.");
  return notes;
}

} // namespace asperity
