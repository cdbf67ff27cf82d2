// Scallops of parallel passes against the circle formula and published-style kinematic values.
#include "asperity/base/units.h"

#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity::floor_test {
namespace {

constexpr double kStored_mm = 1e-9; // float storage: half an ulp of residuals below 0.03 mm

struct Range {
  double lowest = std::numeric_limits<double>::infinity(), highest = -lowest;
};

/// Lowest and highest residual of a chart.
Range residuals(const FloorChart &chart) {
  Range range;
  for (const float e : chart.envelope_mm) {
    range.lowest = std::min(range.lowest, double(e));
    range.highest = std::max(range.highest, double(e));
  }
  return range;
}

/// Passes along x at y = k stepover with tip height rise * y, over a chart two stepovers wide.
FloorChart scalloped(const CutterProfile &profile, double stepover_mm, double spacing_mm,
                     double slope_across = 0.0) {
  SweptPath path = path_with(profile);
  const int passes = 3 + static_cast<int>(profile.radius_mm() / stepover_mm);
  for (int k = -passes; k <= passes; ++k) {
    const double y = k * stepover_mm;
    add(path, Curve::line({-10, y, slope_across * y}, {10, y, slope_across * y}));
  }
  // A third of a cell aside, so that crests fall between cells in a way that changes with the spacing.
  const Vec2 aside(spacing_mm / 3.0);
  FloorChart chart =
      make_floor_chart(Vec2(-0.1, -stepover_mm) + aside, Vec2(0.1, stepover_mm) + aside, spacing_mm, 0.0);
  for (std::size_t cell = 0; cell < chart.wanted_mm.size(); ++cell)
    chart.wanted_mm[cell] = float(slope_across * chart.y_mm(cell / chart.nx));
  sweep(chart, path);
  return chart;
}

struct Kinematic {
  double radius_mm, stepover_mm, scallop_um;
};

// h = R - sqrt(R^2 - s^2 / 4) (derived: two circles s apart meet at half the stepover). A chart sees the
// crest only at its cells: the nearest stands at most half a cell aside, so the highest cell is lower than
// the crest by at most (half a cell) x (slope of the crest, (s / 2) / sqrt(R^2 - s^2 / 4)). The bound is an
// analysis, not a wish: halving the spacing must halve it.
TEST(Scallop, BallCutterMatchesCircleFormulaAsSpacingHalves) {
  const Kinematic cases[] = {{3.0, 0.5, 10.434814},
                             {5.0, 0.5, 6.253911},
                             {3.0, 0.2, 1.667130},
                             {0.5, 0.05, 0.625391},
                             {3.0, 3.0, 401.923789}};
  for (const Kinematic &c : cases) {
    const double half = 0.5 * c.stepover_mm, exact = c.scallop_um * 1e-3;
    EXPECT_NEAR(c.radius_mm - std::sqrt(c.radius_mm * c.radius_mm - half * half), exact, 0.5e-9);
    const double crest_slope = half / std::sqrt(c.radius_mm * c.radius_mm - half * half);
    for (int halving = 0; halving < 4; ++halving) {
      const double spacing = c.stepover_mm / 10.0 / (1 << halving);
      const Range found = residuals(scalloped(CutterProfile::ball(c.radius_mm), c.stepover_mm, spacing));
      const double missed = 0.5 * spacing * crest_slope;
      const double stored = std::max(kStored_mm, exact * 6e-8); // half an ulp
      EXPECT_LE(found.highest, exact + stored + 0.5e-9) << "R " << c.radius_mm << " spacing " << spacing;
      EXPECT_GE(found.highest, exact - missed - stored - 0.5e-9)
          << "R " << c.radius_mm << " spacing " << spacing;
      EXPECT_GE(found.lowest, 0.0);
      // Half a cell aside from the valley: the circle's own sagitta.
      EXPECT_LE(found.lowest, spacing * spacing / (8.0 * c.radius_mm) * 1.01 + stored);
    }
  }
}

// Corner radius 0.5 on D6: flat until the stepover exceeds the tip's flat, then the circle formula.
TEST(Scallop, CornerRadiusCutterIsFlatUntilTheCornersMeet) {
  const CutterProfile cutter = CutterProfile::corner_radius(3.0, 0.5);
  EXPECT_EQ(residuals(scalloped(cutter, 4.0, 0.05)).highest, 0.0);
  const Kinematic cases[] = {{3.0, 5.2, 10.102051}, {3.0, 5.5, 66.987298}};
  for (const Kinematic &c : cases) {
    const double d = 0.5 * c.stepover_mm - 2.5, slope = d / std::sqrt(0.25 - d * d);
    const double spacing = 0.01, highest = residuals(scalloped(cutter, c.stepover_mm, spacing)).highest;
    EXPECT_LE(highest, c.scallop_um * 1e-3 + 1e-8);
    EXPECT_GE(highest, c.scallop_um * 1e-3 - 0.5 * spacing * slope);
  }
}

// Ball R3, passes level along a slope, horizontal pitch 0.2: vertical scallops 2.566952, 4.716667, 13.348181
// um at 30, 45, 60 degrees (derived, and confirmed by brute force elsewhere: pitch along the slope p / cos,
// normal height by the circle formula, vertical height over cos).
TEST(Scallop, AcrossASlopeThePitchAlongItCounts) {
  const Kinematic cases[] = {{30.0, 0.2, 2.566952}, {45.0, 0.2, 4.716667}, {60.0, 0.2, 13.348181}};
  for (const Kinematic &c : cases) {
    const double lean = rad_from_deg(c.radius_mm), spacing = 0.2 / 256.0;
    const Range found = residuals(scalloped(CutterProfile::ball(3.0), 0.2, spacing, std::tan(lean)));
    // Steepest flank of a crest against the slope: (pitch / 2) / R in the slope's own frame, over cos^2 seen
    // vertically.
    const double half = 0.1 / std::cos(lean),
                 steep = half / std::sqrt(9.0 - half * half) / std::pow(std::cos(lean), 2);
    const double wanted_rounding = 3e-8; // the wanted height is stored as float: half an ulp below 0.5 mm
    EXPECT_NEAR(found.highest - found.lowest, c.scallop_um * 1e-3, 0.75 * spacing * steep + wanted_rounding);
  }
}

} // namespace
} // namespace asperity::floor_test
