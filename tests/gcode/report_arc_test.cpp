// Arcs that NISTIR 6556 (Kramer, Proctor, Messina 2000) works out, and its rule on unequal radii.
#include "asperity/base/units.h"
#include "reading.h"

#include <cmath>

namespace asperity::gcode {
namespace {

const Curve &last_curve(const Reading &reading) { return reading.moves().back().curve; }

void expect_arc(const std::string &start, const std::string &arc, double radius_mm, Vec2 centre) {
  const Reading reading = read_good(metric("G0 Z0\nG1 " + start + "\n" + arc), strict());
  ASSERT_FALSE(reading.moves().empty());
  EXPECT_NEAR(last_curve(reading).radius_mm, radius_mm, kRounding_mm) << arc;
  EXPECT_NEAR(last_curve(reading).centre.x, centre.x, kRounding_mm) << arc;
  EXPECT_NEAR(last_curve(reading).centre.y, centre.y, kRounding_mm) << arc;
}

// NISTIR 6556, 3.5.3.2, worked example of the centre format (G13).
TEST(ReportArc, CentreFormatExample) {
  const Reading reading = read_good(metric("G0 X7 Y7 Z9\nG17 G2 x10 y16 i3 j4 z9"), strict());
  const Curve &arc = last_curve(reading);
  expect_at(arc.centre, {10, 11, 9});
  EXPECT_NEAR(arc.radius_mm, 5.0, kRounding_mm);
  EXPECT_LT(arc.sweep_rad, 0.0);
  expect_at(arc.point(1.0), {10, 16, 9});
}

// The same, from another height (G13): a helix.
TEST(ReportArc, CentreFormatExampleAsHelix) {
  const Reading reading = read_good(metric("G0 X7 Y7 Z5\nG17 G2 x10 y16 i3 j4 z9"), strict());
  const Curve &arc = last_curve(reading);
  EXPECT_EQ(arc.rise.z, 4.0);
  expect_at(arc.point(1.0), {10, 16, 9});
  // derived: from (-3,-4) clockwise to (0,5) round the centre is 180 - atan(3/4) = 143.13 deg; helix length
  // by Pythagoras.
  const double sweep_rad = kPi - std::atan2(3.0, 4.0);
  EXPECT_NEAR(arc.sweep_rad, -sweep_rad, kRounding_mm);
  EXPECT_NEAR(arc.length_mm(), std::hypot(5.0 * sweep_rad, 4.0), kRounding_mm);
}

// NISTIR 6556, 3.5.3.1: R above zero turns through at most 180 degrees, below zero through more.
TEST(ReportArc, SignOfRadiusChoosesTheShortOrLongArc) {
  // derived: chord 6, radius 5: half angle asin(3/5).
  const double short_rad = 2.0 * std::asin(0.6);
  const Reading near_arc = read_good(metric("G0 X0 Y0 Z0\nG3 X6 R5"));
  EXPECT_NEAR(last_curve(near_arc).sweep_rad, short_rad, kRounding_mm);
  expect_at(last_curve(near_arc).centre, {3, 4, 0});
  const Reading far_arc = read_good(metric("G0 X0 Y0 Z0\nG3 X6 R-5"));
  EXPECT_NEAR(last_curve(far_arc).sweep_rad, 2.0 * kPi - short_rad, kRounding_mm);
  expect_at(last_curve(far_arc).centre, {3, -4, 0});
}

// NISTIR 6556, appendix B, radius compensation sample 1: arcs of the drawn shape (G24).
TEST(ReportArc, ArcsOfCompensationSampleOne) {
  expect_arc("X1 Y4", "G3 X2 Y3 I1", 1.0, {2, 4});
  expect_arc("X-2 Y-2", "G2 X-2.6 Y-0.2 J1", 1.0, {-2, -1});
  expect_arc("X1.4 Y2.8", "G2 X2 Y3 I0.6 J-0.8", 1.0, {2, 2});
}

// NISTIR 6556, appendix B, radius compensation sample 2 (G25).
TEST(ReportArc, ArcsOfCompensationSampleTwo) {
  expect_arc("X-2 Y-2.5", "G2 X-2.9 Y0.2 J1.5", 1.5, {-2, -1});
  expect_arc("X1.1 Y3.2", "G2 X2 Y3.5 I0.9 J-1.2", 1.5, {2, 2});
}

// NISTIR 6556, appendix B.3 (G26) works with radius compensation, which this reader refuses by name: the
// table entry of -0.03 for a worn cutter belongs in the job, not here.
TEST(ReportArc, CompensationOfTheSamplesIsRefusedByName) {
  const Reading reading = read(metric("G0 X1 Y4 Z0\nG41 D1 G3 X2 Y3 I1"));
  ASSERT_EQ(reading.problems.error_count(), 1u) << reading.problem_text();
  EXPECT_TRUE(reading.says("G41 (radius compensation to the left)"));
  EXPECT_EQ(reading.problems.all()[0].line, 3);
  EXPECT_EQ(reading.problems.all()[0].column, 1);
}

/// A half turn from X0 round (10, 0) that ends `over` beyond X20.
Reading half_turn(const char *units, const char *end, const ReadOptions &options) {
  return read(std::string(units) + " G90 F60 S1000 M3\nG0 X0 Y0 Z1\nG3 X" + end + " Y0 I10 J0\nM2\n",
              options);
}

// NISTIR 6556, 3.5.3.2: radii may differ by 0.002 mm (G27; strict reading).
TEST(ReportArc, RadiiMayDifferByTwoMicrometres) {
  EXPECT_FALSE(half_turn("G21", "20.0019", strict()).problems.has_errors());
  const Reading reading = half_turn("G21", "20.0021", strict());
  ASSERT_EQ(reading.problems.error_count(), 1u);
  EXPECT_TRUE(reading.says("radii differ"));
}

// NISTIR 6556, 3.5.3.2: in inch mode by 0.0002 in (G28; strict reading).
TEST(ReportArc, RadiiMayDifferByTwoTenThousandthsOfAnInch) {
  EXPECT_FALSE(half_turn("G20", "20.00019", strict()).problems.has_errors());
  const Reading reading = half_turn("G20", "20.00021", strict());
  ASSERT_EQ(reading.problems.error_count(), 1u);
  EXPECT_TRUE(reading.says("radii differ"));
}

// Controller documentation: up to 0.005 mm or 0.1 % of the radius, at most 0.5 mm, passes as rounding.
TEST(ReportArc, LargerMismatchPassesAsRoundingWithAWarning) {
  for (const char *end : {"20.0021", "20.0099"}) {
    const Reading reading = half_turn("G21", end, {});
    EXPECT_FALSE(reading.problems.has_errors()) << reading.problem_text();
    EXPECT_TRUE(reading.says("taken as rounding"));
    // The centre is moved so that the arc still meets both ends.
    const Curve &arc = last_curve(reading);
    expect_at(arc.point(0.0), arc.begin);
    expect_at(arc.point(1.0), arc.end);
  }
  EXPECT_TRUE(half_turn("G21", "20.0101", {}).says("radii differ")); // 0.1 % of 10 mm is 0.010
}

} // namespace
} // namespace asperity::gcode
