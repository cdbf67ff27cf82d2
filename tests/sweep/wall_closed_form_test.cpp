// Walls whose shape plane geometry gives in a line: circles, chords, grooves, fillets, lips, ramps.
#include "sweep/changed_path.h"
#include "wall_jobs.h"

#include "asperity/base/units.h"
#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace asperity::wall_test {

namespace {

constexpr double kFloat_mm = 4e-8; // half a last place of float32 near 0.5 mm
constexpr double kChart_mm = 1e-6; // the accuracy promised for plain walls

constexpr double kWallRadius_mm = 13.1, kCutterRadius_mm = 3.0;

SweptCutter plain(CutterProfile profile) {
  SweptCutter cutter;
  cutter.profile = profile;
  cutter.flute_length_mm = 12.0;
  cutter.node_height_mm = {0, 1, 2, 3, 4, 5};
  return cutter;
}

WallChart swept(WallChart chart, const SweptPath &path, float blank_mm = 0.5f) {
  std::fill(chart.blank_mm.begin(), chart.blank_mm.end(), blank_mm);
  Progress progress;
  EXPECT_TRUE(sweep_wall(chart, path, 1, progress));
  return chart;
}

WallChart round_wall(bool inside, double spacing_mm) {
  return make_wall_chart(Outline::circle({2, 1}, 2 * kWallRadius_mm), inside, -4.0, 0.0, spacing_mm);
}

} // namespace

// Source: plane geometry. A disc whose centre runs round at rho leaves a circle of rho - R (boss) or rho + R
// (bore).
TEST(SweepWall, FullCircleLeavesAConstantResidual) {
  for (const bool inside : {false, true}) {
    const double error = 0.0123;
    const double rho =
        inside ? kWallRadius_mm - kCutterRadius_mm - error : kWallRadius_mm + kCutterRadius_mm + error;
    PathMaker maker(plain(CutterProfile::flat(kCutterRadius_mm)));
    maker.start({2 + rho, 1, -5}).arc_to({2 + rho, 1, -5}, {2, 1}, 2 * kPi);
    const WallChart chart = swept(round_wall(inside, 0.1), maker.path());
    for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell)
      ASSERT_NEAR(chart.envelope_mm[cell], error, kFloat_mm) << cell;
  }
}

// Source: plane geometry. A tool driven along a chord of its circle cuts a facet: at angle d from the middle
// of a chord spanning 2a, the facet stands at (rho cos a - R)/cos d, so it is rho (1 - cos a) deep at its
// middle.
TEST(SweepWall, ChordsOfACircleCutFacetsOfTheSagitta) {
  const double rho = kWallRadius_mm + kCutterRadius_mm;
  const int chords = 60;
  const double half = kPi / chords;
  PathMaker maker(plain(CutterProfile::flat(kCutterRadius_mm)));
  maker.start({2 + rho, 1, -5});
  for (int i = 1; i <= chords; ++i)
    maker.line_to({2 + rho * std::cos(2 * half * i), 1 + rho * std::sin(2 * half * i), -5});
  const WallChart chart = swept(round_wall(false, 0.02), maker.path());
  double lowest = 1.0;
  for (std::size_t i = 0; i < chart.columns(); ++i) {
    const double angle = chart.s_mm[i] / kWallRadius_mm;
    const double d = std::remainder(angle - half, 2 * half);
    const double expected = (rho * std::cos(half) - kCutterRadius_mm) / std::cos(d) - kWallRadius_mm;
    // Holds between the facet's ends; beyond them the discs at the corners decide.
    const double facet_end = std::atan(rho * std::sin(half) / (rho * std::cos(half) - kCutterRadius_mm));
    if (std::abs(d) < std::min(half, facet_end)) {
      ASSERT_NEAR(chart.envelope_mm[chart.at(i, 0)], expected, kFloat_mm) << i;
      lowest = std::min(lowest, static_cast<double>(chart.envelope_mm[chart.at(i, 0)]));
    }
  }
  EXPECT_NEAR(lowest, -rho * (1 - std::cos(half)), kChart_mm);
}

// Source: plane geometry. A disc of diameter D that dips d below a straight wall leaves a groove of depth d
// and width 2 sqrt(d (D - d)), close to 2 sqrt(D d).
TEST(SweepWall, StandingCutterDipsAWitnessGroove) {
  const double dip = 0.02, spacing = 0.005, z = -2.0;
  const Outline outline = Outline::rounded_rectangle({0, 0}, 20, 10, 1.0);
  SweptCutter cutter = plain(CutterProfile::flat(kCutterRadius_mm));
  PathMaker maker(cutter);
  const double y = -5.0 - kCutterRadius_mm;
  maker.start({-8, y, z}).line_to({1.0, y, z}).line_to({1.0, y, z}).line_to({8, y, z});
  const SweptPath path = changed(maker.path(), [&](BentPiece &piece) {
    if (piece.owner == 1)
      piece.end.left.fill({0.0, dip}), piece.end.right.fill({0.0, dip});
    piece.joins_previous &= piece.owner != 2;
  });
  const WallChart chart = swept(make_wall_chart(outline, false, z + 0.1, z + 0.3, spacing), path);
  double lowest = 1.0;
  int groove_columns = 0;
  for (std::size_t i = 0; i < chart.columns(); ++i) {
    const float e = chart.envelope_mm[chart.at(i, 0)];
    if (std::abs(chart.foot[i].y + 5.0) > 1e-9 || std::abs(chart.foot[i].x - 1.0) > 2.0)
      continue;
    lowest = std::min(lowest, static_cast<double>(e));
    groove_columns += e < -1e-7f ? 1 : 0;
    const double b = chart.foot[i].x - 1.0;
    const double disc = dip - kCutterRadius_mm + std::sqrt(kCutterRadius_mm * kCutterRadius_mm - b * b);
    ASSERT_NEAR(e, std::min(0.0, -disc), kFloat_mm);
  }
  EXPECT_NEAR(lowest, -dip, kChart_mm);
  const double width = 2 * std::sqrt(dip * (2 * kCutterRadius_mm - dip));
  EXPECT_NEAR(groove_columns * spacing, width,
              2 * spacing); // a column either is or is not in the groove, at each end
}

// Source: plane geometry. A corner of radius r stands r - sqrt(r² - (r-h)²) proud at height h above the tip.
TEST(SweepWall, RoundedCornerLeavesAFilletAtTheBase) {
  for (const double corner : {0.5, kCutterRadius_mm}) {
    PathMaker maker(plain(CutterProfile::corner_radius(kCutterRadius_mm, corner)));
    const double rho = kWallRadius_mm + kCutterRadius_mm, tip = -3.5;
    maker.start({2 + rho, 1, tip}).arc_to({2 + rho, 1, tip}, {2, 1}, 2 * kPi);
    const WallChart chart = swept(round_wall(false, 0.05), maker.path(), 2.9f);
    for (std::size_t row = 0; row < chart.rows(); ++row) {
      const double h = chart.z_mm[row] - tip;
      const double left = std::max(corner - h, 0.0);
      const double expected = corner - std::sqrt(corner * corner - left * left);
      if (h > 0.0) {
        EXPECT_NEAR(chart.envelope_mm[chart.at(7, row)], expected, 2e-7) << h; // float32 at 3 mm
      }
    }
  }
}

TEST(SweepWall, RowsBelowTheTipAndAboveTheFlutesStayUncut) {
  SweptCutter cutter = plain(CutterProfile::flat(kCutterRadius_mm));
  cutter.flute_length_mm = 1.5;
  PathMaker maker(cutter);
  const double rho = kWallRadius_mm + kCutterRadius_mm, tip = -3.0;
  maker.start({2 + rho, 1, tip}).arc_to({2 + rho, 1, tip}, {2, 1}, 2 * kPi);
  const WallChart chart = swept(round_wall(false, 0.1), maker.path());
  for (std::size_t row = 0; row < chart.rows(); ++row)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const std::size_t cell = chart.at(i, row);
      const bool is_reached = chart.z_mm[row] >= tip && chart.z_mm[row] <= tip + 1.5;
      ASSERT_EQ(chart.is_cut(cell), is_reached) << chart.z_mm[row];
      ASSERT_EQ(chart.owner[cell], is_reached ? 0u : kNobody);
    }
}

// Source: plane geometry. On a helix the tip passes height z at one angle; the wall is finished from there
// on.
TEST(SweepWall, HelicalRampFinishesTheWallBehindItsTip) {
  const double rho = kWallRadius_mm + kCutterRadius_mm, depth = 3.8;
  PathMaker maker(plain(CutterProfile::flat(kCutterRadius_mm)));
  maker.start({2 + rho, 1, 0}).arc_to({2 + rho, 1, -depth}, {2, 1}, 2 * kPi);
  const WallChart chart = swept(round_wall(false, 0.05), maker.path(), 0.5f);
  for (std::size_t row = 0; row < chart.rows(); ++row)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const double angle = chart.s_mm[i] / kWallRadius_mm;
      const double reached = -chart.z_mm[row] / depth * 2 * kPi; // where the tip passes this row
      const float e = chart.envelope_mm[chart.at(i, row)];
      if (reached < 2 * kPi && angle > reached) {
        ASSERT_NEAR(e, 0.0, kFloat_mm);
      } else if (reached < 2 * kPi) {
        ASSERT_GT(e, 1e-9);
      }
    }
}

// Source: definition. A ring thinner than the cutter, bored from within: its outer wall is not cut by the
// bore.
TEST(SweepWall, CutterWithinAThinRingDoesNotCutItsOuterWall) {
  PathMaker maker(plain(CutterProfile::flat(kCutterRadius_mm)));
  const double rho = kWallRadius_mm - 0.5 - kCutterRadius_mm; // leaves a ring of 0.5 mm
  maker.start({2 + rho, 1, -5}).arc_to({2 + rho, 1, -5}, {2, 1}, 2 * kPi);
  const WallChart chart = swept(round_wall(false, 0.1), maker.path());
  for (const float e : chart.envelope_mm)
    ASSERT_EQ(e, std::numeric_limits<float>::infinity());
}

// Source: plane geometry. A cutter larger than a hollow corner rests on both flanks: in a square inside
// corner of radius r < R the ray through the corner meets the disc at (R - r)(sqrt 2 - 1).
TEST(SweepWall, LargeCutterLeavesTheHollowCornerStanding) {
  const double r = 1.0;
  const Outline outline = Outline::rounded_rectangle({0, 0}, 20, 16, r);
  PathMaker maker(plain(CutterProfile::flat(kCutterRadius_mm)));
  const double x = 10 - kCutterRadius_mm, y = 8 - kCutterRadius_mm;
  maker.start({-x, -y, -3})
      .line_to({x, -y, -3})
      .line_to({x, y, -3})
      .line_to({-x, y, -3})
      .line_to({-x, -y, -3});
  const double corner_s = [&] {
    for (std::size_t i = 0; i < outline.elements().size(); ++i)
      if (outline.elements()[i].is_arc())
        return outline.element_start_mm(i) + 0.5 * outline.elements()[i].length_mm();
    return 0.0;
  }();
  const WallChart chart = swept(make_wall_chart(outline, true, {corner_s}, {-2.0}), maker.path(), 2.0f);
  EXPECT_NEAR(chart.envelope_mm[0], (kCutterRadius_mm - r) * (std::sqrt(2.0) - 1), 2e-7);
}

} // namespace asperity::wall_test
