// Tooth marks on floors, swept from a timed path: closed forms of end-tooth arcs, ball dents and a leaning
// spindle.
#include "floor_marks_at.h"

#include "texture/bench.h"

#include "asperity/base/units.h"
#include "asperity/surface/areal_parameters.h"
#include "asperity/surface/kinematic.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

/// A peak is missed by up to half a cell of 100 or more a mark.
constexpr double kPeakShare = 0.02;
/// Means over whole marks.
constexpr double kMeanShare = 2e-3;

Feed feed_per_rev(double mm) { return {mm * 500, 30000}; }

FloorChart patch_of(const Bench &bench, Vec2 low, Vec2 high, double spacing, int threads = 1) {
  FloorChart patch = make_floor_chart(low, high, spacing, 0.0);
  EXPECT_TRUE(sweep_floor_with_marks(patch, bench.source(), threads, Progress()));
  return patch;
}

/// A row of cells on the middle of a pass along x, `marks` marks long.
LargeArray<float> middle_row(const Bench &bench, double pitch_mm, int marks = 10) {
  return patch_of(bench, {0, 0}, {marks * pitch_mm, 0}, pitch_mm / 200).envelope_mm;
}

Bench pass_along_x(Cutter cutter, Feed how) {
  Bench bench(cutter);
  bench.feed({-20, 0, 0}, {20, 0, 0}, how);
  return bench;
}

} // namespace

TEST(FloorMarks, CornerRadiusMatchesTheTurningFormula) {
  // fz 0.05, corner 0.5: 0.625391 um, Ra 0.160375; feed 0.2, corner 0.8: 6.274607 um exact, Ra 1.6038 by
  // f^2 / (18 sqrt3 r) (the arc's own Ra is 0.1 % higher).
  struct Row {
    double feed_mm, corner_mm, height_um, ra_um;
  };
  for (const Row &row : {Row{0.05, 0.5, 0.625391, 0.160375}, Row{0.2, 0.8, 6.274607, 1.6038}}) {
    Cutter cutter = bench::plain_cutter(CutterKind::corner_radius);
    cutter.corner_radius_mm = row.corner_mm;
    const Bench bench = pass_along_x(cutter, feed_per_rev(2 * row.feed_mm)); // two equal teeth
    const auto heights = middle_row(bench, row.feed_mm);
    EXPECT_NEAR(um_from_mm(bench::height_mm(heights)), row.height_um, kPeakShare * row.height_um);
    EXPECT_NEAR(um_from_mm(bench::ra_mm(heights)), row.ra_um, 2 * kMeanShare * row.ra_um);
  }
}

TEST(FloorMarks, SharpCornerLeavesFeedTimesTheDish) {
  // fz 0.05 at a dish of 2 degrees: 1.746038 um; sawtooth, so Ra is a quarter.
  const Bench bench = pass_along_x(bench::plain_cutter(), feed_per_rev(0.1));
  const auto heights = middle_row(bench, 0.05);
  EXPECT_NEAR(um_from_mm(bench::height_mm(heights)), 1.746038, kPeakShare * 1.746);
  EXPECT_NEAR(um_from_mm(bench::ra_mm(heights)), 1.746038 / 4, kMeanShare * 1.746);
  // With one long tooth: the feed per revolution.
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.02;
  const auto once = middle_row(pass_along_x(cutter, feed_per_rev(0.1)), 0.1);
  EXPECT_NEAR(um_from_mm(bench::height_mm(once)), 2 * 1.746038, kPeakShare * 3.49);
}

TEST(FloorMarks, ArcsLagByTheCirclesSagitta) {
  // Aside by q, the leading half of the circle lies R - sqrt(R^2 - q^2) behind, and is met earlier by the
  // turn the tooth still has to make, asin(q / R) / 2 pi of the feed. [derived]
  const Bench bench = pass_along_x(bench::plain_cutter(), feed_per_rev(0.2)); // two teeth: 0.1 mm apart
  const double spacing = 0.0005, q = 2.0;
  const auto edge = [&](double y) {
    const auto row = patch_of(bench, {0, y}, {0.1, y}, spacing).envelope_mm;
    std::size_t steepest =
        1; // where a mark ends the height jumps up, from the corner to the next mark's dish
    for (std::size_t i = 1; i < row.size(); ++i)
      if (row[i] - row[i - 1] > row[steepest] - row[steepest - 1])
        steepest = i;
    return spacing * static_cast<double>(steepest);
  };
  const double lag = 3 - std::sqrt(9 - q * q), turn = std::asin(q / 3) / (2 * kPi);
  // Clockwise: to the left of the feed (+y) the tooth comes by before it points ahead.
  EXPECT_NEAR(std::remainder(edge(0) - edge(q) - (lag + 0.2 * turn), 0.1), 0, 2 * spacing);
  EXPECT_NEAR(std::remainder(edge(0) - edge(-q) - (lag - 0.2 * turn), 0.1), 0, 2 * spacing);
}

TEST(FloorMarks, OnARoundPassTheCircleIsFoundWhereItWasMet) {
  // The leading half of the end circle went over p when the axis stood one circle's radius from it, found by
  // halving; the tooth that came by last, and the dish, give the height. [plane geometry]
  constexpr double kPass_mm = 12.0, kCircle_mm = 3.0, kRev_mm = 0.2, kPitch_mm = kRev_mm / 2;
  constexpr double kShare = 0.6; // of the pass lies before the points
  for (const double sweep : {2.0, -2.0}) {
    Bench bench(bench::plain_cutter());
    const auto axis = [&](double along_mm) {
      const double angle = std::copysign(along_mm / kPass_mm, sweep) - kShare * sweep;
      return kPass_mm * Vec2(std::cos(angle), std::sin(angle));
    };
    bench.arc({axis(0), 0}, {0, 0}, sweep, feed_per_rev(kRev_mm));
    const FloorChart row = patch_of(bench, {9.04, 0}, {14.96, 0}, 0.013);
    std::size_t checked = 0;
    for (std::size_t i = 0; i < row.nx; ++i) {
      const Vec2 p(row.x_mm(i), row.y_mm(0));
      double before = kPass_mm * (2.0 * kShare - 0.5), after = kPass_mm * 2.0 * kShare;
      for (int k = 0; k < 60; ++k) {
        const double middle = 0.5 * (before + after);
        (glm::distance(axis(middle), p) > kCircle_mm ? before : after) = middle;
      }
      const Vec2 to_point = p - axis(after);
      const double turns = after / kRev_mm + std::atan2(to_point.y, to_point.x) / (2 * kPi);
      const double since = 2 * turns - std::floor(2 * turns);
      if (since < 1e-6 || since > 1 - 1e-6)
        continue; // where one mark ends
      ++checked;
      EXPECT_NEAR(row.envelope_mm[i], (1.0 - since) * kPitch_mm * std::tan(kDish_rad), 1e-8)
          << p.x << ", " << sweep;
    }
    EXPECT_GT(checked, row.nx - 5);
  }
}

TEST(FloorMarks, BallRastersMatchTheTwoWayPatterns) {
  // Square, feed = stepover: Sz 2 H, Sq 0.421637 H, Sa pi / 9 H. Staggered: 25 / 16, 0.382789, 0.327590. Feed
  // half the stepover: 1.25, 0.307317, 0.261565 and 1.1289, 0.304405, 0.260074. H = s^2 / 8R, cells 1 / 50 of
  // the stepover.
  struct Row {
    double feed_share, stagger, sz, sq, sa;
  };
  constexpr double kStep_mm = 0.2, kHeight_mm = kStep_mm * kStep_mm / 24;
  for (const Row &row : {Row{1, 0, 2, 0.421637, kPi / 9}, Row{1, 0.5, 1.5625, 0.382789, 0.327590},
                         Row{0.5, 0, 1.25, 0.307317, 0.261565}, Row{0.5, 0.5, 1.1289, 0.304405, 0.260074}}) {
    Cutter cutter = bench::plain_cutter(CutterKind::ball);
    cutter.flutes = 1;
    Bench bench(cutter);
    // Rows 8 mm long, all in one direction, each begun on a whole or half revolution (500 a second).
    for (int j = -20; j <= 24; ++j) {
      const double y = kStep_mm * j;
      bench.feed({-4, y, 0}, {4, y, 0}, feed_per_rev(row.feed_share * kStep_mm));
      bench.wait(row.stagger / 500);
    }
    const FloorChart patch = patch_of(bench, {0, 0}, {0.8, 0.8}, kStep_mm / 50);
    const ArealParameters areal = areal_parameters(patch.envelope_mm);
    // The peak is half a cell off along both axes: 1 - (1 - 1 / 50)^2 of each hollow.
    EXPECT_NEAR(areal.sz_mm / kHeight_mm, row.sz, 2 * kPeakShare * row.sz) << row.feed_share << row.stagger;
    EXPECT_NEAR(areal.sq_mm / kHeight_mm, row.sq,
                2 * kMeanShare * row.sq); // spheres against paraboloids: 0.1 %
    EXPECT_NEAR(areal.sa_mm / kHeight_mm, row.sa, 2 * kMeanShare * row.sa);
  }
}

TEST(FloorMarks, BallOnARampLeavesTheSameCuspsAcrossTheSlope) {
  // Along a 30 degree ramp the spheres stand feed / cos 30 apart on the slope: f^2 / 8R of that, measured
  // upright 1 / cos 30 as much. [derived: an inclined plane's normal and vertical heights]
  Cutter cutter = bench::plain_cutter(CutterKind::ball);
  cutter.flutes = 1;
  Bench bench(cutter);
  const double rise = std::tan(kPi / 6);
  // Feed along the slope so that the plan distance a revolution is 0.2 mm.
  bench.feed({-5, 0, -5 * rise}, {5, 0, 5 * rise}, feed_per_rev(0.2 / std::cos(kPi / 6)));
  auto heights = patch_of(bench, {0, 0}, {2, 0}, 0.001).envelope_mm;
  double lowest = HUGE_VAL, highest = -HUGE_VAL;
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const double x = (static_cast<double>(i) + 0.5) * 0.001;
    const double above = static_cast<double>(heights[i]) - rise * x;
    lowest = std::min(lowest, above);
    highest = std::max(highest, above);
  }
  const double slope_pitch = 0.2 / std::cos(kPi / 6);
  const double expected = arc_cusp_mm(3, slope_pitch) / std::cos(kPi / 6);
  EXPECT_NEAR(highest - lowest, expected, kPeakShare * expected);
}

TEST(FloorMarks, LeaningSpindleLeavesHollowsAndSteps) {
  // Along the lean: a hollow of (R - sqrt(R^2 - w^2 / 4)) tan(lean) over the width w. Across it: steps of s
  // tan(lean), 5.2 um at s 3 mm and 0.1 degrees. [common practice, no published source; derived again for the
  // edge circle]
  Bench along(bench::plain_cutter()), across(bench::plain_cutter());
  const Feed creeping{0.04, 30000}; // too little feed for tooth marks
  along.job.machine.tram_deg = across.job.machine.tram_deg = 0.1;
  const double lean = std::tan(rad_from_deg(0.1)), w = 4;
  along.feed({-1, 0, 0}, {1, 0, 0}, creeping);
  const auto hollow = patch_of(along, {0, -w / 2}, {0, w / 2}, 0.01).envelope_mm;
  EXPECT_NEAR(bench::height_mm(hollow), (3 - std::sqrt(9 - w * w / 4)) * lean,
              0.02 * 0.764 * lean); // cells at w / 2
  EXPECT_NEAR(*std::min_element(hollow.begin(), hollow.end()), 0, 1e-7);

  const double s = 3;
  for (int i = -2; i <= 2; ++i)
    across.feed({s * i, -1, 0}, {s * i, 1, 0}, creeping);
  const auto steps = patch_of(across, {-2.5, 0}, {2.5, 0}, 0.002).envelope_mm;
  double jump = 0;
  for (std::size_t i = 1; i < steps.size(); ++i)
    jump = std::max(jump, static_cast<double>(std::abs(steps[i] - steps[i - 1])));
  EXPECT_NEAR(um_from_mm(jump), 5.236, 0.01 * 5.236); // one cell of slope besides
}

TEST(FloorMarks, BeginsStandsAndThreadsLeaveNoGaps) {
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.02;
  Bench bench(cutter);
  // A plunge, a ring in one run of two laps, a spiral out by a half circle.
  bench.feed({4, 0, 3}, {4, 0, 0}, {5, 30000})
      .arc({4, 0, 0}, {0, 0}, 4 * kPi, {50, 30000})
      .arc({4, 0, 0}, {-1, 0}, kPi, {50, 30000});
  const FloorChart one = patch_of(bench, {-6, -6}, {6, 6}, 0.05, 1),
                   two = patch_of(bench, {-6, -6}, {6, 6}, 0.05, 2);
  EXPECT_EQ(one.envelope_mm, two.envelope_mm);
  EXPECT_EQ(one.owner, two.owner);
  for (std::size_t j = 0; j < one.ny; ++j)
    for (std::size_t i = 0; i < one.nx; ++i) {
      const double rho = std::hypot(one.x_mm(i), one.y_mm(j));
      const double e = static_cast<double>(one.envelope_mm[one.at(i, j)]);
      if (rho > 1.02 && rho < 6.98) {
        ASSERT_GT(e, -1e-7) << i << " " << j;
        ASSERT_LT(e, 0.1 * std::tan(rad_from_deg(2)) * 1.001) << i << " " << j;
      }
      if (rho < 0.9) {
        ASSERT_FALSE(std::isfinite(e));
      }
    }
}
