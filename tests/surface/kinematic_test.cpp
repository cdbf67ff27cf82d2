// Tooth and pass marks against worked numbers: derived from circles and trochoids and confirmed by
// brute-force envelopes, and against printed examples of textbooks and trade notes.
#include "asperity/surface/kinematic.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {

constexpr double kDigit_um = 6e-7; // printed to a millionth of a micrometre
constexpr double kShare = 6e-7;    // printed to six or seven places of the cusp height

double um(double mm) { return um_from_mm(mm); }
double micro_inch(double mm) { return mm / 25.4e-6; }

} // namespace

TEST(SideMarks, CircleAndExactTrochoid) {
  SideCut fine{3, 2, 0.05, false}, coarse{3, 2, 0.5, false};
  EXPECT_NEAR(um(arc_cusp_mm(3, 0.05)), 0.104168, kDigit_um);
  EXPECT_NEAR(um(trochoid_cusp_mm(fine)), 0.103072, kDigit_um);
  EXPECT_NEAR(um(arc_cusp_mm(3, 0.5)), 10.434814, kDigit_um);
  EXPECT_NEAR(um(trochoid_cusp_mm(coarse)), 9.407302, kDigit_um);
  fine.is_climb = coarse.is_climb = true;
  EXPECT_NEAR(um(trochoid_cusp_mm(fine)), 0.105283, kDigit_um);
  EXPECT_NEAR(um(trochoid_cusp_mm(coarse)), 11.640795, kDigit_um);
}

TEST(SideMarks, MartellottiFollowsTheExactTrochoidAtFineFeeds) {
  // fz^2 / (8 (R +- n fz / pi)) drops (n fz / 2 pi R)^2 and (fz / R)^2 / 16: here below 5e-5 of the height.
  for (const bool climb : {false, true}) {
    const SideCut cut{3, 2, 0.05, climb};
    const double exact = trochoid_cusp_mm(cut);
    EXPECT_NEAR(martellotti_cusp_mm(cut), exact, 5e-5 * exact);
    EXPECT_NEAR(parabola_cusp_mm(trochoid_radius_mm(cut), 0.05), exact, 5e-5 * exact);
  }
}

TEST(SideMarks, ConventionalLeavesTheLowerMark) {
  // The difference is 2 n fz / (pi R) of the height: 2.1 % at R 3, two teeth, 0.05.
  const double up = trochoid_cusp_mm({3, 2, 0.05, false}), down = trochoid_cusp_mm({3, 2, 0.05, true});
  EXPECT_NEAR(down / up - 1, 2 * 2 * 0.05 / (kPi * 3), 5e-4);
}

TEST(Runout, TwoTeethOfUnequalLength) {
  const double equal = parabola_cusp_mm(3, 0.1);
  EXPECT_NEAR(um(two_tooth_cusp_mm(equal, 0.000416667)), 0.651042, kDigit_um);
  EXPECT_NEAR(um(two_tooth_cusp_mm(equal, 2 * equal)), 0.937500, kDigit_um);
  EXPECT_NEAR(um(two_tooth_cusp_mm(equal, 4 * equal)), 1.666667, kDigit_um);
  EXPECT_NEAR(um(two_tooth_cusp_mm(equal, 0.05)), 1.666667, kDigit_um); // feed-per-revolution marks
  EXPECT_EQ(two_tooth_cusp_mm(0, 0.01), 0);
}

TEST(Runout, OneToothOfManyMakesTheSurface) {
  constexpr double kHeights_um[] = {0.416667, 0.937500, 1.666667}, kRa_um[] = {0.106917, 0.240563, 0.427667};
  for (int flutes = 2; flutes <= 4; ++flutes) {
    const double height = single_tooth_cusp_mm(parabola_cusp_mm(3, 0.05), flutes);
    EXPECT_NEAR(um(height), kHeights_um[flutes - 2], kDigit_um);
    EXPECT_NEAR(um(cusp_ra_mm(height)), kRa_um[flutes - 2], kDigit_um);
  }
}

TEST(FloorMarks, CornerRadiusAndDishedCorner) {
  EXPECT_NEAR(um(arc_cusp_mm(0.8, 0.2)), 6.274607, kDigit_um);
  EXPECT_NEAR(um(parabola_cusp_mm(0.8, 0.2)), 6.25, 1e-12);
  EXPECT_NEAR(um(rounded_tool_ra_mm(0.8, 0.2)), 1.6038, 5e-5);
  EXPECT_NEAR(um(shop_ra_mm(0.8, 0.2)), 1.5625, 1e-12);
  EXPECT_NEAR(um(arc_cusp_mm(0.5, 0.05)), 0.625391, kDigit_um);
  EXPECT_NEAR(um(cusp_ra_mm(parabola_cusp_mm(0.5, 0.05))), 0.160375, kDigit_um);
  EXPECT_NEAR(um(dish_cusp_mm(0.05, rad_from_deg(2))), 1.746038, kDigit_um);
}

TEST(FloorMarks, ArcOverParabolaAndTrueRaOverShopForm) {
  // Exact arcs of radius 1 at pitch 0.5: 1.016133 times the parabola's height, Ra 1.039558 times f^2 / 32 r.
  EXPECT_NEAR(arc_cusp_mm(1, 0.5) / parabola_cusp_mm(1, 0.5), 1.016133, kShare);
  EXPECT_NEAR(rounded_tool_ra_mm(1, 0.5) / shop_ra_mm(1, 0.5), 32 / (18 * std::sqrt(3.0)), 1e-12);
  EXPECT_NEAR(rounded_tool_ra_mm(1, 0.5), cusp_ra_mm(parabola_cusp_mm(1, 0.5)), 1e-15);
}

TEST(FloorMarks, PrintedTurningExamples) {
  // Lathe-programming notes: f 0.08, r 0.4 gives Rmax 2.0 um and Ra about 0.5 um.
  EXPECT_NEAR(um(parabola_cusp_mm(0.4, 0.08)), 2.0, 1e-12);
  EXPECT_NEAR(um(shop_ra_mm(0.4, 0.08)), 0.5, 1e-12);
  EXPECT_NEAR(um(rounded_tool_ra_mm(0.4, 0.08)), 0.5132, 5e-5);
  // Article on theoretical finish: 0.008 in/rev, nose 1/32 in gives 256 uin = 6.5 um; the arc itself 257.06.
  const double nose = mm_from_inch(1.0 / 32), feed = mm_from_inch(0.008);
  EXPECT_NEAR(micro_inch(parabola_cusp_mm(nose, feed)), 256, 1e-9);
  EXPECT_NEAR(um(parabola_cusp_mm(nose, feed)), 6.5, 0.05);
  EXPECT_NEAR(micro_inch(arc_cusp_mm(nose, feed)), 257.06, 5e-3);
  // Engineering notes: 0.005 in, nose 0.031 in gives Ra 25.2 uin by f^2 / 32 r; the true constant 25.87.
  EXPECT_NEAR(micro_inch(shop_ra_mm(mm_from_inch(0.031), mm_from_inch(0.005))), 25.2, 0.05);
  EXPECT_NEAR(micro_inch(rounded_tool_ra_mm(mm_from_inch(0.031), mm_from_inch(0.005))), 25.87, 5e-3);
}

TEST(BallPattern, SquareGridAtEqualPitches) {
  const double one = parabola_cusp_mm(3, 0.3);
  const PatternHeights p = square_ball_pattern({3, 0.3, 0.3});
  EXPECT_NEAR(p.sz_mm / one, 2, 1e-12);
  EXPECT_NEAR(p.sq_mm / one, 0.421637, kShare);
  EXPECT_NEAR(p.sa_mm / one, kPi / 9, 1e-12);
}

TEST(BallPattern, StaggeredGridAtEqualPitches) {
  const double one = parabola_cusp_mm(3, 0.3);
  const PatternHeights p = staggered_ball_pattern({3, 0.3, 0.3});
  EXPECT_NEAR(p.sz_mm / one, 25.0 / 16, 1e-12);
  EXPECT_NEAR(p.sq_mm / one, 0.382789, kShare);
  EXPECT_NEAR(p.sa_mm / one, 0.327590, kShare);
}

TEST(BallPattern, FeedOfHalfTheStepover) {
  const double one = parabola_cusp_mm(3, 0.3);
  const PatternHeights square = square_ball_pattern({3, 0.3, 0.15});
  EXPECT_NEAR(square.sz_mm / one, 1.25, 1e-12);
  // Two independent cusps, 1 and 1/4 high: squares add. (A sampled envelope gave 0.307317, 1e-6 lower.)
  EXPECT_NEAR(square.sq_mm / one, 2 / (3 * std::sqrt(5.0)) * std::sqrt(1 + 1.0 / 16), 1e-12);
  EXPECT_NEAR(square.sa_mm / one, 0.261565, kShare);
  const PatternHeights staggered = staggered_ball_pattern({3, 0.3, 0.15});
  EXPECT_NEAR(staggered.sz_mm / one, 1.1289, 1e-4);
  EXPECT_NEAR(staggered.sq_mm / one, 0.304405, kShare);
  EXPECT_NEAR(staggered.sa_mm / one, 0.260074, kShare);
}

TEST(BallPattern, WithoutFeedMarksItIsTheRuledCusp) {
  const double one = parabola_cusp_mm(3, 0.3);
  for (const double feed : {0.0, 1e-6}) {
    EXPECT_NEAR(square_ball_pattern({3, 0.3, feed}).sa_mm, cusp_ra_mm(one), 1e-5 * one);
    EXPECT_NEAR(staggered_ball_pattern({3, 0.3, feed}).sq_mm, cusp_rq_mm(one), 1e-5 * one);
  }
}
