// Heights between passes against worked numbers in closed form, each confirmed at its source by a brute-force
// envelope.
#include "asperity/cut/scallop.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace asperity;

namespace {

/// Worked numbers are printed to a millionth of a micrometre unless said otherwise.
constexpr double kHalfDigit_um = 5e-7;

double um(double mm) { return um_from_mm(mm); }

/// Lowest point over the cross line at `aside` of a corner-radius cutter swept along a slope, by turning
/// round the corner's centre circle: every tube position is tried.
double swept_height_by_search(double diameter, double corner, double aside, double slope) {
  const double ring = diameter / 2 - corner;
  double lowest = 1e9;
  for (int i = 0; i <= 200000; ++i) {
    const double turn = -kPi / 2 + kPi * i / 200000;
    const double across = aside - ring * std::sin(turn);
    if (std::abs(across) <= corner)
      lowest = std::min(lowest, -ring * std::cos(turn) * std::sin(slope) -
                                    std::sqrt(corner * corner - across * across));
  }
  return lowest;
}

} // namespace

TEST(Scallop, BallCutterMatchesCircleFormula) {
  EXPECT_NEAR(um(ball_scallop_mm(3, 0.5)), 10.434814, kHalfDigit_um);
  EXPECT_NEAR(um(ball_scallop_mm(5, 0.5)), 6.253911, kHalfDigit_um);
  EXPECT_NEAR(um(ball_scallop_mm(3, 0.2)), 1.667130, kHalfDigit_um);
  EXPECT_NEAR(um(ball_scallop_mm(0.5, 0.05)), 0.625391, kHalfDigit_um);
  EXPECT_NEAR(um(ball_scallop_mm(3, 3)), 401.923789, kHalfDigit_um);
  EXPECT_NEAR(um(ball_scallop_mm(mm_from_inch(0.125), mm_from_inch(0.010))), 2.541017, kHalfDigit_um);
}

TEST(Scallop, BallCutterMatchesArcCuspRatios) {
  // Table of exact circular-arc cusps, h/r against f/r, ten digits.
  EXPECT_NEAR(ball_scallop_mm(1, 0.1), 0.0012507822, 5e-11);
  EXPECT_NEAR(ball_scallop_mm(1, 0.25), 0.0078432584, 5e-11);
  EXPECT_NEAR(ball_scallop_mm(1, 0.5), 0.0317541634, 5e-11);
  EXPECT_NEAR(ball_scallop_mm(1, 1.0), 0.1339745962, 5e-11);
  EXPECT_NEAR(ball_scallop_mm(1, 1.5), 0.3385621722, 5e-11);
}

TEST(Scallop, PassesADiameterApartLeaveTheRadius) {
  EXPECT_DOUBLE_EQ(ball_scallop_mm(3, 6), 3);
  EXPECT_DOUBLE_EQ(ball_scallop_mm(3, 8), 3);
}

TEST(Scallop, StepoverForWantedHeightMatchesWorkedNumbers) {
  EXPECT_NEAR(ball_stepover_mm(3, 0.005), 0.346266, 5e-7);
  EXPECT_NEAR(ball_stepover_mm(3, 0.001), 0.154906, 5e-7);
  EXPECT_NEAR(ball_stepover_mm(1.5, 0.010), 0.345832, 5e-7);
  EXPECT_NEAR(ball_scallop_mm(3, ball_stepover_mm(3, 0.02)), 0.02, 1e-14);
}

TEST(Scallop, BallOnSlopeMatchesWorkedNumbers) {
  const double slopes_deg[] = {30, 45, 60}, normal_um[] = {2.223046, 3.335187, 6.674091},
               vertical_um[] = {2.566952, 4.716667, 13.348181};
  for (int i = 0; i < 3; ++i) {
    const double slope = rad_from_deg(slopes_deg[i]);
    const double height = um(ball_slope_scallop_mm(3, 0.2, slope));
    EXPECT_NEAR(height, normal_um[i], kHalfDigit_um);
    EXPECT_NEAR(height / std::cos(slope), vertical_um[i], kHalfDigit_um);
  }
}

TEST(Scallop, FlatCutterLeavesStairs) {
  // Normal 50.000 um; level step 0.0577350 mm at 30 degrees and pitch 0.1.
  const double height = stair_scallop_mm(0.1, rad_from_deg(30));
  EXPECT_NEAR(um(height), 50.000, 5e-4);
  EXPECT_NEAR(height / std::cos(rad_from_deg(30)), 0.0577350, 5e-8);
}

TEST(Scallop, CornerRadiusCutterOnFloorMatchesWorkedNumbers) {
  EXPECT_EQ(corner_radius_scallop_mm(6, 0.5, 4), 0);
  EXPECT_EQ(corner_radius_scallop_mm(6, 0.5, 5), 0);
  EXPECT_NEAR(um(corner_radius_scallop_mm(6, 0.5, 5.2)), 10.102051, kHalfDigit_um);
  EXPECT_NEAR(um(corner_radius_scallop_mm(6, 0.5, 5.5)), 66.987298, kHalfDigit_um);
  EXPECT_NEAR(um(corner_radius_scallop_mm(6, 0.5, 6)), 500, kHalfDigit_um);
  EXPECT_NEAR(um(corner_radius_scallop_mm(10, 1, 8.4)), 20.204103, kHalfDigit_um);
}

TEST(Scallop, BallOnCurvedSurfaceMatchesWorkedNumbers) {
  const double rho_mm[] = {10, 20, 50}, convex_um[] = {4.881259, 4.316516, 3.977951},
               concave_um[] = {2.625410, 3.188671, 3.526822};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(um(ball_curved_scallop_mm(3, 0.3, rho_mm[i])), convex_um[i], kHalfDigit_um);
    EXPECT_NEAR(um(ball_curved_scallop_mm(3, 0.3, -rho_mm[i])), concave_um[i], kHalfDigit_um);
  }
}

TEST(Scallop, NearlyFlatCylinderIsThePlane) {
  EXPECT_NEAR(um(ball_curved_scallop_mm(3, 0.3, 1e9)), um(ball_scallop_mm(3, 0.3)), 1e-6);
}

TEST(Scallop, CornerRadiusCutterUpSlopeMatchesWorkedNumbers) {
  // Printed to 1e-5 um.
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, 1, rad_from_deg(15))), 12.41195, 5e-6);
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, 1, rad_from_deg(5))), 4.32458, 5e-6);
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, 1, rad_from_deg(30))), 22.90489, 5e-6);
}

TEST(Scallop, CornerRadiusCutterUpSlopeMatchesSearchedEnvelope) {
  // The search's grid of 200000 turns leaves less than 1e-6 um at these shallow hollows.
  for (const double slope_deg : {8.0, 20.0, 50.0})
    for (const double stepover : {0.6, 2.0}) {
      const double slope = rad_from_deg(slope_deg);
      const double searched =
          swept_height_by_search(6, 0.5, stepover / 2, slope) - swept_height_by_search(6, 0.5, 0, slope);
      EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, stepover, slope)), um(searched), 1e-4);
    }
}

TEST(Scallop, CornerRadiusCutterUpSlopeMeetsItsLimits) {
  // Derived: level it is the floor form, upright the ring is a circle of the cutter's radius, a ball has no
  // ring.
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, 5.5, 0)), 66.987298, kHalfDigit_um);
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 0.5, 0.5, kPi / 2)), 10.434814, kHalfDigit_um);
  EXPECT_NEAR(um(corner_radius_up_slope_scallop_mm(6, 3.0, 0.5, rad_from_deg(20))), 10.434814, kHalfDigit_um);
}

TEST(Chord, FacetOfControllerArcKeepsItsTolerance) {
  // Plane geometry: facet length 2 sqrt(2 r s) for sag s; controller documentation gives 0.002 mm. The form
  // drops s^2 beside 2 r s, which is worth s^2/(2 r) = 0.0002 um here.
  const double facet_mm = 2 * std::sqrt(2 * 10 * 0.002);
  EXPECT_NEAR(facet_mm, 0.4, 1e-12);
  EXPECT_NEAR(um(chord_sagitta_mm(10, facet_mm)), 2.0, 2.1e-4);
}

TEST(Witness, WidthMatchesWorkedNumbers) {
  // Worked numbers for D 6: chord of the cutter's circle, printed to 0.01 mm.
  const double depth_mm[] = {0.005, 0.010, 0.020, 0.050}, width_mm[] = {0.35, 0.49, 0.69, 1.09};
  for (int i = 0; i < 4; ++i)
    EXPECT_NEAR(witness_width_mm(6, depth_mm[i]), width_mm[i], 0.005);
}
