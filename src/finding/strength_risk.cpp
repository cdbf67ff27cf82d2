// Asks at every moment of the cut whether the blank breaks, the hold-down slips or the cutter snaps.
#include "contact.h"
#include "found.h"
#include "line_tally.h"
#include "wording.h"

#include "asperity/base/units.h"
#include "asperity/cut/deflection.h"
#include "asperity/cut/strength.h"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

namespace asperity {

namespace {

/// Bending stress carbide and high-speed steel bear for certain [MPa]. From memory.
constexpr double kCutterStress_MPa = 1000.0;

/// The moment with the smallest margin (strength over load).
struct Tightest {
  double margin = std::numeric_limits<double>::infinity();
  double load = 0; ///< in the unit of the strength
  const CutSample *sample = nullptr;
  LineTally lines; ///< of all moments below the wanted margin

  void take(const Evidence &evidence, const CutSample &s, double load_now, double strength) {
    if (load_now <= 0.0)
      return;
    const double now = std::max(0.0, strength) / load_now;
    if (now < kWantedMargin)
      if (const PathPiece *piece = piece_of(evidence, s))
        lines.add_line(piece->line, 1.0 / std::max(now, 1e-3));
    if (now < margin) {
      margin = now;
      load = load_now;
      sample = &s;
    }
  }
};

Found found_risk(const Evidence &evidence, FindingKind kind, Weight weight, const Tightest &tightest) {
  Found found;
  Finding &finding = found.finding;
  found.excess = kWantedMargin / std::max(tightest.margin, 1e-3);
  finding.kind = kind;
  finding.weight = weight;
  finding.place_mm = tightest.sample->position_mm;
  finding.where = "worst with the tip at " + words_xyz(tightest.sample->position_mm);
  finding.size = {{"margin", tightest.margin, ""},
                  {"wanted margin", kWantedMargin, ""},
                  {"peak force", tightest.sample->peak_force_N, "N"}};
  finding.rests_on = force_rests_on(evidence.job);
  tightest.lines.write_to(finding);
  return found;
}

double cutter_stress_MPa(const Cutter &cutter, double force_N) {
  // At the holder the shank carries it, at the end of the flutes their thinner core does.
  const double at_holder = holder_stress_MPa(force_N, cutter.stick_out_mm, cutter.shank_diameter_mm);
  const double fluted = std::min(cutter.flute_length_mm, cutter.stick_out_mm);
  return std::max(at_holder,
                  holder_stress_MPa(force_N, fluted, cutter.flute_core_ratio * cutter.diameter_mm));
}

} // namespace

FoundList find_break_risk(const Evidence &evidence) {
  const Job &job = evidence.job;
  const double modulus = job.blank.section_modulus_mm3();
  if (!job.holding.grip_z_mm || modulus <= 0.0 || job.material.break_stress_MPa <= 0.0)
    return {};
  Tightest tightest;
  for (const CutSample &s : evidence.cut.samples) {
    const double height = s.position_mm.z + s.axial_depth_mm - *job.holding.grip_z_mm;
    if (s.in_contact && height > 0.0)
      tightest.take(evidence, s,
                    base_bending_stress_MPa(kImpactFactor * s.peak_force_N, height, modulus,
                                            kSquareCornerConcentration),
                    job.material.break_stress_MPa);
  }
  if (tightest.margin >= kWantedMargin)
    return {};
  Found found = found_risk(evidence, FindingKind::blank_may_break, Weight::danger, tightest);
  found.finding.size.push_back({"stress at the grip", tightest.load, "MPa"});
  found.finding.cause =
      fmt::format("The side force bends the blank at its grip to {:.1f} MPa (tooth pulses and a square "
                  "corner counted); the material breaks at about {:.0f} MPa.",
                  tightest.load, job.material.break_stress_MPa);
  found.finding.remedy =
      "Take less stock per pass, grip higher or support the blank, or make it thicker at the grip.";
  return {found};
}

FoundList find_slip_risk(const Evidence &evidence) {
  const Job &job = evidence.job;
  if (!job.holding.clamp_force_N || job.material.friction <= 0.0)
    return {};
  Tightest tightest;
  for (const CutSample &s : evidence.cut.samples)
    if (s.in_contact)
      tightest.take(evidence, s, s.peak_force_N,
                    holding_force_N(*job.holding.clamp_force_N, job.material.friction,
                                    std::max(0.0, static_cast<double>(s.mean_force_N[2]))));
  if (tightest.margin >= kWantedMargin)
    return {};
  Found found = found_risk(evidence, FindingKind::hold_down_may_slip, Weight::danger, tightest);
  const double holding = tightest.margin * tightest.load;
  found.finding.size.push_back({"holding force", holding, "N"});
  found.finding.cause =
      fmt::format("The cutter pushes sideways with up to {:.1f} N; friction under the clamps holds about "
                  "{:.1f} N, and {:.0f} times the push is wanted.",
                  tightest.load, holding, kWantedMargin);
  found.finding.remedy =
      "Clamp harder or at more places, put a rougher sheet under the blank, or take less stock per "
      "pass.";
  found.finding.rests_on +=
      std::string(found.finding.rests_on.empty() ? "" : "; ") + "friction of the material's table";
  return {found};
}

FoundList find_cutter_overload(const Evidence &evidence) {
  Tightest tightest;
  for (const CutSample &s : evidence.cut.samples) {
    const Cutter *cutter = cutter_of(evidence, s);
    if (s.in_contact && cutter && cutter->shank_diameter_mm > 0.0 && cutter->diameter_mm > 0.0)
      tightest.take(evidence, s, cutter_stress_MPa(*cutter, kImpactFactor * s.peak_force_N),
                    kCutterStress_MPa);
  }
  if (tightest.margin >= kWantedMargin)
    return {};
  const Weight weight = tightest.margin < 1.0 ? Weight::danger : Weight::flaw;
  Found found = found_risk(evidence, FindingKind::cutter_overloaded, weight, tightest);
  found.finding.size.push_back({"stress in the cutter", tightest.load, "MPa"});
  found.finding.cause =
      fmt::format("The side force bends the cutter to {:.0f} MPa (tooth pulses counted); about {:.0f} MPa "
                  "is safe.",
                  tightest.load, kCutterStress_MPa);
  found.finding.remedy =
      "Take less stock per pass or a slower feed, or use a thicker cutter with less stick-out.";
  return {found};
}

} // namespace asperity
