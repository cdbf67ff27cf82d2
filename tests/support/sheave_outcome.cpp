// A hand-made outcome of a line sheave's rim.
#include "support/sheave_outcome.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity::test_support {

namespace {

constexpr double kAllowance_mm = 1.0;
constexpr double kLevel_mm = 3.5;

double residual_um(double s_mm, double z_mm, double length_mm) {
  const bool is_upper = static_cast<int>(z_mm / kLevel_mm) % 2 == 1;
  const double steady = kSteady_um + (is_upper ? kLevelStep_um : 0.0);
  const double away = std::min(s_mm, length_mm - s_mm) / (0.5 * kGrooveWidth_mm);
  return away < 1.0 ? steady - kGrooveDepth_um * (1.0 - away * away) : steady;
}

WallFeature rim() {
  WallFeature wall;
  wall.name = "rim";
  wall.outline = Outline::circle({0.0, 0.0}, kRimDiameter_mm);
  wall.diameter_mm = kRimDiameter_mm;
  wall.z_top_mm = kRimTop_mm;
  wall.size[0] = SizeWanted{.nominal_mm = 62.0, .lower_mm = 61.95, .upper_mm = 62.05};
  wall.finish.lip_mm = 0.1;
  wall.finish.ra_um = 3.2;
  return wall;
}

Finding witness() {
  return {.kind = FindingKind::witness_line,
          .weight = Weight::flaw,
          .feature = 0,
          .place_mm = {31.0, 0.0, 7.0},
          .where = "at 0 deg round the wall, z 0.6 to 14.0 mm",
          .size = {{"depth", 6.0, "um"}, {"width", 0.6, "mm"}},
          .cause = "the cutter stands at the end of its plunge, its side force falls and it springs back "
                   "into the wall",
          .remedy = "enter by a tangent arc or a ramp",
          .lines = {12, 16, 20, 24},
          .line_count = 4,
          .rests_on = "machine stiffness (default)"};
}

Finding lip() {
  return {.kind = FindingKind::base_lip,
          .weight = Weight::flaw,
          .feature = 0,
          .place_mm = {0.0, 31.0, 0.0},
          .where = "all round the base",
          .size = {{"height", kLip_mm, "mm"}},
          .cause = "the last level ends above the base",
          .remedy = "go 0.6 mm deeper on the last level",
          .lines = {24},
          .line_count = 1,
          .rests_on = ""};
}

Finding slipping() {
  return {.kind = FindingKind::hold_down_may_slip,
          .weight = Weight::danger,
          .place_mm = {-31.0, 0.0, 3.5},
          .where = "while cutting at 180 deg",
          .size = {{"margin", 1.4, ""}},
          .cause = "the side force nears what the bolt holds by friction",
          .remedy = "tighten the bolt or take less depth",
          .lines = {13},
          .line_count = 31,
          .rests_on = ""};
}

void add_cut(Outcome &outcome) {
  PathPiece approach, level;
  approach.duration_s = 4.0;
  approach.line = 11;
  level.duration_s = 121.0;
  level.line = 13;
  level.kind = MoveKind::feed;
  approach.tool = level.tool = 1;
  outcome.path.pieces = {approach, level};
  outcome.path.duration_s = 125.0;
  outcome.path.cutting_s = 121.0;
  CutSample sample{.piece = 1, .time_s = 10.0, .position_mm = {31.0, 0.0, 3.5}};
  sample.peak_force_N = 23.0f;
  sample.power_W = 11.0f;
  sample.chip_temperature_C = 84.0f;
  sample.tip_bend_mm = 0.031f;
  sample.in_contact = true;
  outcome.cut.samples = {sample};
}

} // namespace

WallChart rim_chart(double spacing_mm) {
  WallChart chart = make_wall_chart(rim().outline, false, 0.0, kRimTop_mm, spacing_mm);
  const double length_mm = chart.outline.length_mm();
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      chart.blank_mm[chart.at(i, j)] = static_cast<float>(kAllowance_mm);
      if (chart.z_mm[j] > kLip_mm) {
        chart.envelope_mm[chart.at(i, j)] =
            static_cast<float>(mm_from_um(residual_um(chart.s_mm[i], chart.z_mm[j], length_mm)));
        chart.owner[chart.at(i, j)] = 1;
      }
    }
  return chart;
}

Outcome rim_outcome(double spacing_mm) {
  Outcome outcome;
  outcome.job.title = "Line sheave rim, second plan";
  outcome.job.file = "sheave.toml";
  outcome.job.material.name = "PLA, printed";
  outcome.job.cutters = {Cutter{.number = 1, .name = "6 mm flat", .diameter_mm = 6.0}};
  outcome.job.features = {rim()};
  outcome.job.defaults_used = {"machine.stiffness_xy_N_per_um = 0.5 (common practice, no published source)"};
  outcome.program.file = "sheave.ngc";
  outcome.program.line_count = 40;
  add_cut(outcome);
  outcome.charts = {rim_chart(spacing_mm)};
  SizeMeasure diameter;
  diameter.what = "diameter";
  diameter.mean_mm = 62.018;
  diameter.smallest_mm = 62.004;
  diameter.largest_mm = 62.02;
  diameter.roundness_mm = 0.006;
  diameter.wanted = std::get<WallFeature>(outcome.job.features[0]).size[0];
  diameter.verdict = Verdict::met;
  outcome.features = {
      FeatureResult{.sizes = {diameter}, .cut_share = 0.957, .lowest_um = 2, .mean_um = 9, .highest_um = 10}};
  outcome.findings = {slipping(), witness(), lip()};
  outcome.checks = {{"rim", "diameter", "61.950 to 62.050 mm", 62.018, "mm", true},
                    {"rim", "lip height", "at most 0.100 mm", kLip_mm, "mm", false}};
  outcome.notes = {"runout of T1 is the default"};
  return outcome;
}

} // namespace asperity::test_support
