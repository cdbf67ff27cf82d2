// Every shop error alone, against the law it follows (plane geometry, unless a source is named).
#include "small_job.h"

#include "asperity/cut/scallop.h"

#include <cmath>

namespace asperity::test {
namespace {

constexpr double kMicrometre_mm = 1e-3;

const SizeMeasure &diameter(const Outcome &outcome) { return outcome.features[0].sizes.at(0); }

TEST(ErrorLaw, NothingWrongGivesTheDrawnSize) {
  const Outcome outcome = predicted(boss_job(), boss_program());
  EXPECT_NEAR(diameter(outcome).mean_mm, 20.0, 1e-6);
  EXPECT_NEAR(outcome.features[1].sizes.at(0).mean_mm, 4.0, 1e-6);
}

TEST(ErrorLaw, DiameterErrorIsTwiceTheCuttersRadiusError) {
  Job job = boss_job();
  job.effects.diameter_error = true;
  job.cutters[0].diameter_error_mm = 0.04;
  EXPECT_NEAR(diameter(predicted(job, boss_program())).mean_mm, 20.0 - 0.04, 1e-6);
}

TEST(ErrorLaw, RunoutCutsAsIfTheRadiusWereHalfTheReadingLarger) {
  Job job = boss_job();
  job.effects.runout = true;
  job.cutters[0].runout_mm = 0.03;
  EXPECT_NEAR(diameter(predicted(job, boss_program())).mean_mm, 20.0 - 0.03, 1e-6);
}

TEST(ErrorLaw, HeightErrorIsTheZZeroError) {
  for (const double error : {0.05, -0.08}) {
    Job job = boss_job();
    job.effects.zero_error = true;
    job.setup.z_zero_error_mm = error;
    EXPECT_NEAR(predicted(job, boss_program()).features[1].sizes.at(0).mean_mm, 4.0 + error, 1e-6);
  }
}

TEST(ErrorLaw, LipHeightIsTheFinalDepthError) {
  for (const double too_high : {0.137, 0.6}) {
    Job job = boss_job();
    job.effects.zero_error = true;
    job.setup.z_zero_error_mm = too_high;
    const Outcome outcome = predicted(job, boss_program());
    const auto lip = std::find_if(outcome.findings.begin(), outcome.findings.end(),
                                  [](const Finding &f) { return f.kind == FindingKind::base_lip; });
    ASSERT_NE(lip, outcome.findings.end());
    EXPECT_NEAR(lip->size.at(0).value, too_high, kMicrometre_mm);
  }
}

TEST(ErrorLaw, XYZeroErrorMovesTheCircleButKeepsItsSize) {
  Job job = boss_job();
  job.effects.zero_error = true;
  job.setup.xy_zero_error_mm = {0.05, -0.02};
  const Outcome outcome = predicted(job, boss_program());
  // Mean over directions of a shifted circle seen from the nominal centre: size change of second order,
  // d^2/(2r).
  EXPECT_NEAR(diameter(outcome).mean_mm, 20.0, 0.054 * 0.054 / 10.0);
  EXPECT_NEAR(outcome.features[0].highest_um - outcome.features[0].lowest_um, 2e3 * std::hypot(0.05, 0.02),
              1.0);
}

TEST(ErrorLaw, CircleCutAsChordsKeepsTheirSagitta) {
  constexpr int kChords = 60;
  std::string text = boss_program();
  std::string chords;
  for (int i = 1; i <= kChords; ++i) {
    const double a = -2.0 * kPi * i / kChords;
    chords += "G1 X" + std::to_string(13 * std::cos(a)) + " Y" + std::to_string(13 * std::sin(a)) + " F900\n";
  }
  const std::string arc = "G2 X13 Y0 I-13 J0 F900\n";
  while (text.find(arc) != std::string::npos)
    text.replace(text.find(arc), arc.size(), chords);
  const Outcome outcome = predicted(boss_job(), text);
  // The cutter's centre runs inside its circle by up to the sagitta of radius 13; the wall becomes the
  // polygon that lies a cutter radius within, whose corners miss the circle by r (1/cos(pi/n) - 1).
  const double half = kPi / kChords;
  const double sagitta_um = 1e3 * chord_sagitta_mm(13.0, 2.0 * 13.0 * std::sin(half));
  EXPECT_NEAR(outcome.features[0].lowest_um, -sagitta_um,
              0.02 * sagitta_um); // columns may miss a facet's middle
  EXPECT_NEAR(outcome.features[0].highest_um, -3e3 * (1.0 / std::cos(half) - 1.0), 0.1); // ... or its end
}

TEST(ErrorLaw, ResultConvergesAsTheSpacingHalves) {
  // Rows of cells: the mean residual over a lip of known height converges with the row spacing.
  double last = 1e9;
  for (const double spacing : {0.4, 0.2, 0.1, 0.05}) {
    Job job = boss_job();
    job.effects.zero_error = true;
    job.setup.z_zero_error_mm = 0.33;
    job.resolution.wall_spacing_mm = spacing;
    const double error = std::abs(predicted(job, boss_program()).features[0].cut_share - (4.0 - 0.33) / 4.0);
    EXPECT_LE(error, 0.5 * spacing / 4.0 + 1e-9);
    last = error;
  }
  EXPECT_LT(last, 0.01);
}

} // namespace
} // namespace asperity::test
