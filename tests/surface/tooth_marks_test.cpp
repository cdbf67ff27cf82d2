// Wall marks of single teeth against brute force (every tooth's exact trochoid, every revolution) and against
// the closed forms of runout.
#include "asperity/surface/tooth_marks.h"

#include "asperity/base/units.h"
#include "asperity/surface/kinematic.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <random>

using namespace asperity;

namespace {

/// Circles and parabolas differ by (fz / R)^2 of the height: 1e-3 at the feeds used here.
constexpr double kParabola = 1e-3;

/// Depth of a tooth's trochoid aside of its lowest point, by halving R sin q +- a q = x.
double trochoid_rise(double radius, double advance, double aside) {
  double low = 0, high = kPi / 2;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (radius * std::sin(middle) + advance * middle < std::abs(aside) ? low : high) = middle;
  }
  return radius * (1 - std::cos(low));
}

double brute_force(const ToothPass &pass, double s, double z) {
  const auto radii = tooth_radii_mm(pass.radius_mm, pass.flutes, pass.eccentricity_mm, pass.angle_rad);
  const double longest = *std::max_element(radii.begin(), radii.end());
  const double revolution = pass.flutes * pass.feed_per_tooth_mm;
  const double advance = revolution / (2 * kPi) * (pass.is_climb ? -1 : 1);
  const double lag_turns = z * std::tan(pass.helix_rad) / pass.radius_mm / (2 * kPi);
  double lowest = 1e9;
  const double home = std::floor(s / revolution);
  for (double turn = home - 3; turn <= home + 3; ++turn)
    for (int i = 0; i < pass.flutes; ++i) {
      const double place = revolution * (turn + lag_turns) + i * pass.feed_per_tooth_mm;
      const double rise = trochoid_rise(pass.radius_mm, advance, s - place);
      lowest = std::min(lowest, longest - radii[static_cast<std::size_t>(i)] + rise +
                                    pass.wall_per_mm * (s - place) * (s - place) / 2);
    }
  return lowest;
}

double um(double mm) { return um_from_mm(mm); }

} // namespace

TEST(ToothMarks, MatchBruteForceEnvelope) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> place(-5, 5), height(0, 12);
  for (const int flutes : {1, 2, 3, 4})
    for (const double eccentricity : {0.0, 0.0005, 0.003, 0.02})
      for (const bool climb : {true, false})
        for (const double wall : {0.0, 1 / 13.0, -1 / 13.0}) {
          const ToothPass pass{3, flutes, 0.2, eccentricity, 0.4, rad_from_deg(30), climb, wall};
          const ToothMarks marks(pass);
          // Where two hollows meet, their crossing is that of parabolas: (revolution / R)^2 / 12 of the
          // height.
          const double near = 1e-9 + 0.004 * marks.cusp_mm();
          for (int i = 0; i < 50; ++i) {
            const double s = place(random), z = height(random);
            ASSERT_NEAR(marks.height_mm(s, z), brute_force(pass, s, z), near) << flutes << eccentricity;
          }
        }
}

TEST(ToothMarks, EqualTeethLeaveTheTrochoidCusp) {
  for (const double feed : {0.05, 0.5})
    for (const bool climb : {false, true}) {
      const ToothMarks marks({3, 2, feed, 0, 0, 0, climb, 0});
      const double exact = trochoid_cusp_mm({3, 2, feed, climb});
      EXPECT_EQ(marks.marking_teeth(), 2);
      EXPECT_DOUBLE_EQ(marks.pitch_mm(), feed);
      EXPECT_NEAR(marks.cusp_mm(), exact, 3e-5 * exact); // next order of the tooth's turn, at feed 0.5
      EXPECT_NEAR(marks.height_mm(0, 0), 0, 1e-15);
      EXPECT_NEAR(marks.height_mm(feed / 2, 0), exact, 3e-5 * exact);
    }
}

TEST(ToothMarks, TwoTeethFollowTheRunoutLaw) {
  // h0 (1 + delta / 4 h0)^2, delta = 2 e; beyond delta = 4 h0 one tooth marks, at feed per revolution.
  const double equal = trochoid_cusp_mm({3, 2, 0.1, true});
  for (const double share : {0.0, 0.5, 1.0, 2.0, 3.9, 4.1, 50.0}) {
    const ToothMarks marks({3, 2, 0.1, share * equal / 2});
    const double law = two_tooth_cusp_mm(equal, share * equal);
    EXPECT_NEAR(marks.cusp_mm(), law, kParabola * law) << share;
    EXPECT_EQ(marks.marking_teeth(), share < 4 ? 2 : 1) << share;
  }
}

TEST(ToothMarks, FiveMicrometresOfEccentricityLeaveOneMarkATurn) {
  // R 3, fz 0.05: 0.416667 / 0.9375 / 1.666667 um for 2 / 3 / 4 flutes by the circle; climb adds n fz / (pi
  // R).
  constexpr double kCircle_um[] = {0.416667, 0.937500, 1.666667};
  for (int flutes = 2; flutes <= 4; ++flutes)
    for (const bool climb : {true, false}) {
      const ToothMarks marks({3, flutes, 0.05, 0.005, 0, 0, climb});
      const double stretch = 1 + (climb ? 1 : -1) * flutes * 0.05 / (kPi * 3);
      const double expected = kCircle_um[flutes - 2] * stretch;
      EXPECT_EQ(marks.marking_teeth(), 1);
      EXPECT_NEAR(marks.pitch_mm(), 0.05 * flutes, 1e-12);
      EXPECT_NEAR(um(marks.cusp_mm()), expected, 2 * kParabola * expected);
    }
}

TEST(ToothMarks, HelixShiftsTheMarksByItsLag) {
  // After a lead (2 pi R / tan helix) the pattern has moved on by one revolution's feed and repeats.
  const ToothPass pass{3, 2, 0.1, 0.005, 0, rad_from_deg(30)};
  const ToothMarks marks(pass);
  const double lead = 2 * kPi * 3 / std::tan(pass.helix_rad);
  for (double s = 0; s < 0.2; s += 0.013) {
    EXPECT_NEAR(marks.height_mm(s, lead), marks.height_mm(s, 0), 1e-12);
    EXPECT_NEAR(marks.height_mm(s + 0.05, lead / 4), marks.height_mm(s, 0), 1e-12);
    EXPECT_NEAR(marks.height_at_turn_mm(s / 0.2, 1.0), marks.height_mm(s, 1.0), 1e-12);
  }
}

TEST(ToothMarks, WallCurvatureDeepensOutsideAndFlattensInside) {
  // f^2 / 8 (1/R +- 1/rho), the convex and concave cusp laws; conventional and climb averaged out.
  for (const double rho : {13.1, -13.1}) {
    const double expected = 0.1 * 0.1 / 8 * (1 / 3.0 + 1 / rho);
    double mean = 0;
    for (const bool climb : {true, false})
      mean += ToothMarks({3, 2, 0.1, 0, 0, 0, climb, 1 / rho}).cusp_mm() / 2;
    EXPECT_NEAR(mean, expected, 2 * kParabola * expected);
  }
  EXPECT_EQ(ToothMarks({3, 2, 0.1, 0.01, 0, 0, false, -1 / 3.0}).cusp_mm(), 0); // bore of the cutter's size
  EXPECT_EQ(ToothMarks({3, 2, 0.0, 0.01}).height_mm(1, 1), 0);                  // standing still
}

TEST(ToothMarks, TenMillionPointsASecond) {
  // Five times slower is let pass: the machine may be busy. CPU time, not wall time.
  constexpr double kSlack = 5;
  const ToothMarks marks({3, 3, 0.05, 0.0002, 0.3, 0.5});
  const std::clock_t begin = std::clock();
  double sum = 0;
  for (int i = 0; i < 1000000; ++i)
    sum += marks.height_mm(i * 0.0037, i * 1e-5);
  const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  RecordProperty("points_per_second", static_cast<int>(1e6 / seconds));
  EXPECT_GT(sum, 0);
  EXPECT_LT(seconds, 0.1 * kSlack);
}
