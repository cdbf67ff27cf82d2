// Cutter, blank and machine yielding: tables, worked numbers, and an independent integration of M/EI.
#include "asperity/cut/deflection.h"

#include "asperity/base/units.h"
#include "asperity/cut/strength.h"

#include <gtest/gtest.h>

#include <algorithm>

using namespace asperity;

namespace {

constexpr double kCarbide_MPa = 580e3, kHighSpeedSteel_MPa = 215e3;
/// Bending diameter of a fluted bar over its cutting diameter, 0.8 [equivalent diameter of end mills from
/// strain-gauge tests; tool maker's training text 0.7-0.8].
constexpr double kBendingShare = 0.8;
const CutterBeam kStepped{.stick_out_mm = 30,
                          .flute_length_mm = 12,
                          .flute_diameter_mm = 2.4,
                          .shank_diameter_mm = 6,
                          .elastic_modulus_MPa = kCarbide_MPa};

/// Bends the bar step by step from the holder down: curvature M/EI summed to slope, slope to movement.
double integrated_compliance(const CutterBeam &beam, double z_mm, double zc_mm) {
  constexpr int kSteps = 200000;
  const double ds = (beam.stick_out_mm - z_mm) / kSteps;
  double slope = 0, movement = 0;
  for (int i = 0; i < kSteps; ++i) {
    const double s = beam.stick_out_mm - (i + 0.5) * ds; // height of the middle of this step
    const double d = s < beam.flute_length_mm ? beam.flute_diameter_mm : beam.shank_diameter_mm;
    const double moment = std::max(0.0, s - zc_mm);
    const double bend = moment / (beam.elastic_modulus_MPa * kPi * d * d * d * d / 64) * ds;
    movement += (slope + bend / 2) * ds;
    slope += bend;
  }
  return movement;
}

} // namespace

TEST(BarStiffness, MatchesTableOfTipStiffness) {
  // Table derived from 3 E I / L^3 with carbide 580 GPa, high-speed steel 215 GPa, bending diameter 0.8 D.
  // Tolerance: half the last printed digit.
  struct Row {
    double diameter, length, carbide, carbide_half, steel, steel_half;
  };
  const Row rows[] = {{1, 6, 0.16, 0.005, 0.06, 0.005},    {2, 10, 0.56, 0.005, 0.21, 0.005},
                      {3.175, 12, 2.1, 0.05, 0.76, 0.005}, {3.175, 20, 0.44, 0.005, 0.17, 0.0055},
                      {4, 16, 2.2, 0.05, 0.81, 0.005},     {6, 20, 5.7, 0.05, 2.1, 0.05},
                      {6, 25, 2.9, 0.05, 1.1, 0.05},       {6, 35, 1.06, 0.005, 0.39, 0.005},
                      {8, 30, 5.3, 0.05, 2.0, 0.05}};
  for (const Row &row : rows) {
    const double d = kBendingShare * row.diameter;
    EXPECT_NEAR(bar_stiffness_N_per_um(d, row.length, kCarbide_MPa), row.carbide, row.carbide_half)
        << row.diameter;
    EXPECT_NEAR(bar_stiffness_N_per_um(d, row.length, kHighSpeedSteel_MPa), row.steel, row.steel_half)
        << row.diameter;
  }
}

TEST(CutterBeam, PlainBarFollowsCantileverFormula) {
  // Handbook cantilever: x^2 (3a - x)/(6EI) below the load's distance a, a^2 (3x - a)/(6EI) beyond it.
  const CutterBeam beam{25, 25, 4.8, 4.8, kCarbide_MPa};
  const double ei = kCarbide_MPa * kPi * 4.8 * 4.8 * 4.8 * 4.8 / 64;
  for (const double z : {0.0, 3.0, 11.0, 24.0})
    for (const double zc : {0.0, 1.5, 12.0, 25.0}) {
      const double a = 25 - zc, x = 25 - z;
      const double handbook = x <= a ? x * x * (3 * a - x) / (6 * ei) : a * a * (3 * x - a) / (6 * ei);
      EXPECT_NEAR(cutter_compliance_mm_per_N(beam, z, zc), handbook, 1e-12 * (1 + handbook));
    }
}

TEST(CutterBeam, TipOfPlainBarIsTheBarStiffness) {
  const CutterBeam beam{25, 25, 4.8, 4.8, kCarbide_MPa};
  const double tip_N_per_um = 1e-3 / cutter_compliance_mm_per_N(beam, 0, 0);
  EXPECT_NEAR(tip_N_per_um, bar_stiffness_N_per_um(4.8, 25, kCarbide_MPa), 1e-9);
}

TEST(CutterBeam, TipOfSteppedBarFollowsTwoPartFormula) {
  // Textbook: Lf^3/(3 E If) + (L^3 - Lf^3)/(3 E Is).
  const double i_flute = round_second_moment_mm4(2.4), i_shank = round_second_moment_mm4(6);
  const double textbook = 12.0 * 12 * 12 / (3 * kCarbide_MPa * i_flute) +
                          (30.0 * 30 * 30 - 12.0 * 12 * 12) / (3 * kCarbide_MPa * i_shank);
  EXPECT_NEAR(cutter_compliance_mm_per_N(kStepped, 0, 0), textbook, 1e-12 * textbook);
}

TEST(CutterBeam, SteppedBarMatchesStepwiseIntegration) {
  // Midpoint steps err by about 1/steps where the diameter changes inside one; 200000 steps leave 1e-5.
  constexpr double kShare = 2e-5;
  for (const double z : {0.0, 5.0, 12.0, 20.0})
    for (const double zc : {0.0, 7.0, 12.0, 18.0}) {
      const double exact = cutter_compliance_mm_per_N(kStepped, z, zc);
      EXPECT_NEAR(exact, integrated_compliance(kStepped, z, zc), kShare * exact) << z << " " << zc;
    }
}

TEST(CutterBeam, LoadAndPointMayChangePlaces) {
  // Maxwell-Betti reciprocity.
  for (const double z : {0.0, 4.0, 13.0, 29.0})
    for (const double zc : {1.0, 12.0, 21.0})
      EXPECT_DOUBLE_EQ(cutter_compliance_mm_per_N(kStepped, z, zc),
                       cutter_compliance_mm_per_N(kStepped, zc, z));
}

TEST(CutterBeam, HolderDoesNotYield) {
  EXPECT_EQ(cutter_compliance_mm_per_N(kStepped, 30, 0), 0.0);
  EXPECT_EQ(cutter_compliance_mm_per_N(kStepped, 0, 31), 0.0);
}

TEST(Blank, SlenderPostBendsTwentySevenMicrometresAtTenNewton) {
  // Worked number: post 20 x 20 mm, 60 mm up, E 2.0 GPa, 10 N: 27 um, bending alone (F L^3/(3 E I), half a
  // digit).
  const double i = rectangle_second_moment_mm4(20, 20);
  constexpr double kRigidInShear_mm2 = 1e12;
  EXPECT_NEAR(1e3 * 10 * blank_compliance_mm_per_N(60, 60, i, kRigidInShear_mm2, 2000), 27, 0.5);
}

TEST(Blank, ShearAddsTwoPointFourMicrometres) {
  // Timoshenko's beam: F z/(5/6 G A), G = E/(2 x 1.35) with Poisson's ratio 0.35 [from memory, rigid
  // polymers].
  const double i = rectangle_second_moment_mm4(20, 20);
  const double bending_um = 1e3 * 10 * 60.0 * 60 * 60 / (3 * 2000 * i);
  const double shear_um = 1e3 * 10 * 60 / (5.0 / 6 * (2000 / 2.7) * 400);
  EXPECT_NEAR(shear_um, 2.43, 0.005);
  EXPECT_NEAR(1e3 * 10 * blank_compliance_mm_per_N(60, 60, i, 400, 2000), bending_um + shear_um, 1e-9);
}

TEST(Blank, LoadAndPointMayChangePlacesAndTheGripStands) {
  const double i = rectangle_second_moment_mm4(20, 20);
  EXPECT_DOUBLE_EQ(blank_compliance_mm_per_N(15, 50, i, 400, 2000),
                   blank_compliance_mm_per_N(50, 15, i, 400, 2000));
  EXPECT_EQ(blank_compliance_mm_per_N(0, 50, i, 400, 2000), 0.0);
}

TEST(Blank, BendingBelowTheLoadFollowsCantileverFormula) {
  // Handbook cantilever: z^2 (3 zc - z)/(6 E I) for z below the load.
  const double i = rectangle_second_moment_mm4(20, 20);
  EXPECT_NEAR(blank_compliance_mm_per_N(15, 50, i, 1e12, 2000), 15.0 * 15 * (150 - 15) / (6 * 2000 * i),
              1e-12);
}

TEST(Machine, ComplianceIsTheInverseStiffness) {
  // Desktop-mill design sheet: 5 N/um, so about 11 N bends the machine 2.2 um (sheet rounds to 2.5).
  EXPECT_NEAR(1e3 * 11 * machine_compliance_mm_per_N(5), 2.2, 1e-12);
}

TEST(HolderStress, FollowsRoundBarBendingFormula) {
  // 32 F L/(pi d^3); W of a round bar of 10 mm is 98.17 mm^3 [handbook value, from memory].
  EXPECT_NEAR(holder_stress_MPa(98.17, 10, 10), 10.0, 0.001);
}
