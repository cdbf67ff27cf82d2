// Mean force, immersion, torque and power against worked numbers and closed forms.
#include "asperity/cut/force.h"

#include "asperity/base/units.h"
#include "cut/force_sets.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

constexpr int kFlutes = 2;
constexpr double kRadius_mm = 3, kAxial_mm = 10, kFeedPerTooth_mm = 0.05;
/// Closed form against closed form: rounding only.
constexpr double kRounding = 1e-10;

Vec3 mean_of(const Immersion &arc) {
  return mean_force_N(kAluminiumLike, arc, kFlutes, kAxial_mm, kFeedPerTooth_mm);
}

/// `half_digit` is half of the last digit the worked number was printed with.
void expect_printed(Vec3 force_N, Vec3 printed_N, Vec3 half_digit) {
  EXPECT_NEAR(force_N.x, printed_N.x, half_digit.x);
  EXPECT_NEAR(force_N.y, printed_N.y, half_digit.y);
  EXPECT_NEAR(force_N.z, printed_N.z, half_digit.z);
}

} // namespace

// Source of the five triples: worked numbers for D 6, two flutes, 10 mm deep, 0.05 mm a tooth, derived from
// the textbook linear-edge model and confirmed there by numerical integration.

TEST(MeanForce, LightConventionalCutMatchesWorkedNumbers) {
  expect_printed(mean_of(conventional_immersion(0.2, kRadius_mm)), {-21.37, -10.08, 3.93}, Vec3(0.005));
}

TEST(MeanForce, LightClimbCutMatchesWorkedNumbers) {
  expect_printed(mean_of(climb_immersion(0.2, kRadius_mm)), {15.85, 17.90, 3.93}, Vec3(0.005));
}

TEST(MeanForce, HalfConventionalCutMatchesWorkedNumbers) {
  expect_printed(mean_of(conventional_immersion(3.0, kRadius_mm)), {-150.6, 67.6, 33.9}, Vec3(0.05));
}

TEST(MeanForce, HalfClimbCutMatchesWorkedNumbers) {
  expect_printed(mean_of(climb_immersion(3.0, kRadius_mm)), {24.5, 171.1, 33.9}, Vec3(0.05));
}

TEST(MeanForce, SlotMatchesWorkedNumbers) {
  expect_printed(mean_of(climb_immersion(6.0, kRadius_mm)), {-126.2, 238.7, 67.7}, Vec3(0.05));
}

TEST(MeanForce, SlotMatchesTextbookSlotForms) {
  // Textbook slot calibration: the mean force is a straight line in feed per tooth.
  const ForceCoefficients &k = kAluminiumLike;
  const double n_ap = kFlutes * kAxial_mm, f = kFeedPerTooth_mm;
  const Vec3 force_N = mean_of(conventional_immersion(2 * kRadius_mm, kRadius_mm));
  EXPECT_NEAR(force_N.x, -n_ap * (k.krc * f / 4 + k.kre / kPi), kRounding);
  EXPECT_NEAR(force_N.y, n_ap * (k.ktc * f / 4 + k.kte / kPi), kRounding);
  EXPECT_NEAR(force_N.z, n_ap * (k.kac * f / kPi + k.kae / 2), kRounding);
}

TEST(MeanForce, TextbookDoubleAngleFormAgrees) {
  // The textbook prints the sums with cos 2 phi and sin 2 phi.
  const ForceCoefficients &k = kAluminiumLike;
  const double f = kFeedPerTooth_mm, chip = kFlutes * kAxial_mm * f / (8 * kPi),
               edge = kFlutes * kAxial_mm / (2 * kPi);
  const auto up_to = [&](double phi) {
    const double c2 = std::cos(2 * phi), s2 = std::sin(2 * phi), c = std::cos(phi), s = std::sin(phi);
    return Vec3(chip * (k.ktc * c2 - k.krc * (2 * phi - s2)) + edge * (-k.kte * s + k.kre * c),
                chip * (k.ktc * (2 * phi - s2) + k.krc * c2) - edge * (k.kte * c + k.kre * s),
                edge * (-k.kac * f * c + k.kae * phi));
  };
  const Immersion arc{0.4, 2.1};
  expect_printed(mean_of(arc), up_to(arc.exit_rad) - up_to(arc.entry_rad), Vec3(kRounding));
}

TEST(MeanForce, NoContactGivesNoForce) {
  EXPECT_EQ(mean_of({1.0, 1.0}), Vec3(0.0));
  EXPECT_EQ(mean_of(climb_immersion(0.0, kRadius_mm)), Vec3(0.0));
}

TEST(MeanForce, ArcBehindTheCutterAddsNothing) {
  // By the sign convention a tooth cuts only in front, 0 < phi < pi.
  expect_printed(mean_of({0.0, 1.6 * kPi}), mean_of({0.0, kPi}), Vec3(kRounding));
}

TEST(Immersion, QuarterHalfAndFullDepthGiveSixtyNinetyAndHundredEightyDegrees) {
  // Plane geometry: acos(1/2), acos(0), acos(-1).
  for (const auto &[depth_mm, span_deg] : {std::pair{1.5, 60.0}, {3.0, 90.0}, {6.0, 180.0}}) {
    const Immersion climb = climb_immersion(depth_mm, kRadius_mm);
    const Immersion conventional = conventional_immersion(depth_mm, kRadius_mm);
    EXPECT_NEAR(deg_from_rad(climb.span_rad()), span_deg, kRounding);
    EXPECT_NEAR(deg_from_rad(conventional.span_rad()), span_deg, kRounding);
    EXPECT_EQ(climb.exit_rad, kPi);
    EXPECT_EQ(conventional.entry_rad, 0.0);
  }
}

TEST(Torque, FollowsFromSpecificEnergyTimesChipVolume) {
  // Energy balance: without edge force, power = ktc x (depth x width x feed speed), a textbook identity.
  ForceCoefficients k{.ktc = 700};
  constexpr double radial_mm = 1.2, rpm = 12000;
  const double feed_mm_per_s = kFlutes * kFeedPerTooth_mm * rev_per_s_from_rpm(rpm);
  const double volume_mm3_per_s = kAxial_mm * radial_mm * feed_mm_per_s;
  const double torque_Nmm = mean_torque_Nmm(k, climb_immersion(radial_mm, kRadius_mm), kFlutes, kAxial_mm,
                                            kFeedPerTooth_mm, kRadius_mm);
  EXPECT_NEAR(power_W(torque_Nmm, rpm), k.ktc * volume_mm3_per_s * 1e-3, kRounding);
}

TEST(Torque, EdgeForceWorksOverTheImmersedArc) {
  // Derived: two flutes in half immersion keep half a tooth in cut on average.
  ForceCoefficients k{.kte = 10};
  const double torque_Nmm =
      mean_torque_Nmm(k, climb_immersion(3.0, kRadius_mm), kFlutes, kAxial_mm, kFeedPerTooth_mm, kRadius_mm);
  EXPECT_NEAR(torque_Nmm, 0.5 * k.kte * kAxial_mm * kRadius_mm, kRounding);
}

TEST(Power, OneNewtonMetreAt9549RpmIsOneKilowatt) {
  // Handbook form P[kW] = T[N m] n / 9549; the constant is rounded to four digits.
  EXPECT_NEAR(power_W(1000.0, 9549.0), 1000.0, 0.05);
}

TEST(Kienzle, AluminiumAtRouterChipThickness) {
  // Tool maker's catalogue, wrought aluminium kc1 700 N/mm^2, mc 0.25: 1480 N/mm^2 at 0.05 mm.
  EXPECT_NEAR(kienzle_kc_N_per_mm2(700, 0.25, 0.05), 1480, 0.5);
  EXPECT_NEAR(kienzle_kc_N_per_mm2(700, 0.25, 1.0), 700, kRounding);
}
