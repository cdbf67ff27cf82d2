// Finds where the chip is too thin to be cut (rubbing) and where it gets hot enough to smear.
#include "contact.h"
#include "line_tally.h"
#include "wording.h"

#include "asperity/cut/chip.h"
#include "asperity/cut/heat.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// Share of the contact length that may rub or run hot unsaid: entries, exits and stops always do. Common
/// practice, no published source.
constexpr double kUnsaidShare = 0.05;
/// From this share on it is a flaw of the whole job.
constexpr double kFlawShare = 0.5;
/// A stretch shorter than this cools in the solid material beside it [mm]. From memory.
constexpr double kLeastHot_mm = 2.0;
constexpr double kRoom_C = 23.0;

/// Stretches of steps that answer yes.
struct Stretch {
  double length_mm = 0;  ///< all together
  double longest_mm = 0; ///< without a break
  const CutSample *worst = nullptr;
  LineTally lines;
};

template <class Answer, class Worse>
Stretch gather(const Evidence &evidence, const std::vector<ContactStep> &steps, Answer answer, Worse worse) {
  Stretch stretch;
  double run = 0.0;
  for (const ContactStep &step : steps) {
    if (!answer(*step.sample)) {
      run = 0.0;
      continue;
    }
    run += step.length_mm;
    stretch.length_mm += step.length_mm;
    stretch.longest_mm = std::max(stretch.longest_mm, run);
    stretch.lines.add_line(piece_of(evidence, *step.sample)->line, step.length_mm);
    if (!stretch.worst || worse(*step.sample, *stretch.worst))
      stretch.worst = step.sample;
  }
  return stretch;
}

Found found_stretch(FindingKind kind, const Stretch &stretch, double share) {
  Found found;
  Finding &finding = found.finding;
  found.excess = share / kFlawShare;
  finding.kind = kind;
  finding.weight = share > kFlawShare ? Weight::flaw : Weight::note;
  finding.place_mm = stretch.worst->position_mm;
  finding.where = fmt::format("{:.0f} % of the path in contact ({:.0f} mm), worst at {}", 100.0 * share,
                              stretch.length_mm, words_xyz(stretch.worst->position_mm));
  finding.size = {{"share of the path in contact", 100.0 * share, "%"}, {"length", stretch.length_mm, "mm"}};
  stretch.lines.write_to(finding);
  return found;
}

double least_chip_of(const Evidence &evidence, const CutSample &sample) {
  const Cutter *cutter = cutter_of(evidence, sample);
  return cutter ? least_chip_mm(cutter->edge_radius_um) : 0.0;
}

} // namespace

FoundList find_rubbing(const Evidence &evidence) {
  const std::vector<ContactStep> steps = contact_steps(evidence);
  const double total = total_length_mm(steps);
  const Stretch stretch = gather(
      evidence, steps,
      [&](const CutSample &s) { return !s.plunging && s.thickest_chip_mm < least_chip_of(evidence, s); },
      [](const CutSample &a, const CutSample &b) { return a.thickest_chip_mm < b.thickest_chip_mm; });
  if (total <= 0.0 || stretch.length_mm <= kUnsaidShare * total)
    return {};
  Found found = found_stretch(FindingKind::rubbing, stretch, stretch.length_mm / total);
  Finding &finding = found.finding;
  const double least = least_chip_of(evidence, *stretch.worst);
  finding.size.push_back({"thinnest chip that cuts", 1e3 * least, "um"});
  finding.cause =
      fmt::format("The thickest chip stays below {:.1f} um, 0.3 times the edge radius: the edge rubs instead "
                  "of cutting, which heats and dulls it.",
                  1e3 * least);
  finding.remedy =
      "Raise the feed, lower the spindle speed, or leave a little more stock for the finishing pass; use a "
      "sharp cutter.";
  finding.rests_on = "edge radius of the cutter, which wear enlarges";
  return {found};
}

FoundList find_overheating(const Evidence &evidence) {
  const Material &material = evidence.job.material;
  if (material.flow_temperature_C <= 0.0)
    return {};
  const std::vector<ContactStep> steps = contact_steps(evidence);
  const double total = total_length_mm(steps);
  const Stretch stretch = gather(
      evidence, steps, [&](const CutSample &s) { return s.chip_temperature_C > material.flow_temperature_C; },
      [](const CutSample &a, const CutSample &b) { return a.chip_temperature_C > b.chip_temperature_C; });
  if (total <= 0.0 || stretch.longest_mm <= kLeastHot_mm || stretch.length_mm <= kUnsaidShare * total)
    return {};
  Found found = found_stretch(FindingKind::overheating, stretch, stretch.length_mm / total);
  Finding &finding = found.finding;
  const double cool =
      thinnest_cool_chip_mm(material.ktc_N_per_mm2, material.kte_N_per_mm, material.density_kg_per_m3,
                            material.heat_capacity_J_per_kgK, material.flow_temperature_C, kRoom_C);
  finding.size.push_back({"hottest chip", stretch.worst->chip_temperature_C, "degC"});
  finding.size.push_back({"longest stretch", stretch.longest_mm, "mm"});
  finding.cause = fmt::format("Chips thinner than {:.0f} um get hotter than {:.0f} degC and smear or melt.",
                              1e3 * cool, material.flow_temperature_C);
  finding.remedy =
      "Raise the feed or lower the spindle speed so that the chip is thicker, use a cutter with fewer teeth "
      "and a sharp edge, and blow air on it.";
  if (!std::isfinite(cool)) {
    finding.cause =
        fmt::format("Even thick chips of this material get hotter than {:.0f} degC by the cut's own work.",
                    material.flow_temperature_C);
    finding.remedy = "Cool with air, use a sharp cutter and take light cuts; try on a spare piece first.";
  }
  finding.rests_on = force_rests_on(evidence.job);
  finding.rests_on += std::string(finding.rests_on.empty() ? "" : "; ") +
                      "all heat taken to stay in the chip, so about "
                      "twice too hot";
  return {found};
}

} // namespace asperity
