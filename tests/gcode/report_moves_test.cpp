// Moves that NISTIR 6556 (Kramer, Proctor, Messina 2000) works out in its text: words, parameters, cycles,
// offsets.
#include "asperity/base/units.h"
#include "reading.h"

namespace asperity::gcode {
namespace {

/// End points of the moves, in order.
std::vector<Vec3> ends_of(const Reading &reading) {
  std::vector<Vec3> ends;
  for (const Move &move : reading.moves())
    ends.push_back(move.curve.end);
  return ends;
}

void expect_path(const Reading &reading, std::size_t from, const std::vector<Vec3> &wanted) {
  const std::vector<Vec3> ends = ends_of(reading);
  ASSERT_EQ(ends.size(), from + wanted.size()) << reading.problem_text();
  for (std::size_t i = 0; i < wanted.size(); ++i)
    expect_at(ends[from + i], wanted[i]);
}

// NISTIR 6556, 3.3.2.2, worked text (G9).
TEST(Report, ParameterOfAParameterIsSetAndRead) {
  const Reading reading = read_good(metric("#1=2\n##1=0.375\nG0 x#2"));
  ASSERT_EQ(reading.moves().size(), 1u);
  EXPECT_EQ(reading.moves()[0].curve.end.x, 0.375);
}

// NISTIR 6556, 3.3.3, worked text (G10): a setting takes effect after the whole line is read.
TEST(Report, ParameterSettingWaitsForTheEndOfItsLine) {
  const Reading reading = read_good(metric("#3=15\n#3=6 G1 x#3\ny#3"));
  ASSERT_EQ(reading.moves().size(), 2u);
  EXPECT_EQ(reading.moves()[0].curve.end.x, 15.0);
  EXPECT_EQ(reading.moves()[1].curve.end.y, 6.0);
}

// NISTIR 6556, 3.3.2.4, worked text (G11) inside a word. derived: see Expression.LongExampleOfTheReport.
TEST(Report, LongExpressionInAnXWord) {
  const Reading reading =
      read_good(metric("G0 x[2+asin[1/2.1+-0.345]/[atan[fix[4.4]*2.1*sqrt[16.8]]/[-18]]**2]"));
  ASSERT_EQ(reading.moves().size(), 1u);
  EXPECT_NEAR(reading.moves()[0].curve.end.x, 2.000545077939, kRounding_mm);
}

// NISTIR 6556, 3.3, worked text (G12).
TEST(Report, BlanksInsideNumbersDoNotCount) {
  const Reading reading = read_good(metric("g0x +0. 12 34y 7"));
  ASSERT_EQ(reading.moves().size(), 1u);
  expect_at(reading.moves()[0].curve.end, {0.1234, 7.0, 50.0});
}

// The report's sample session, NISTIR 6556, 4 (G14, G15, G16): arc by radius, tool length, cycle in G91.
TEST(Report, SampleSessionOfArcOffsetAndCycle) {
  ReadOptions options;
  options.length_offset_mm = {{2, 1.0}};
  options.home_mm = {0.0, 0.0, 0.0};
  const Reading reading = read_good("G21 M3 S1000\n"
                                    "g1 x3 y1 f20\n"
                                    "g2 x[6-[4*3/2]] r7.01 z0.5\n"
                                    "t2 m6 g43 h2 m3\n"
                                    "g1 x asin[0.5]\n"
                                    "g91 g81 x3 y2 z-0.8 r1.5 l2\n"
                                    "m2\n",
                                    options);
  constexpr double kPrintedAngle_deg = 5e-5, kPrinted_mm = 5e-5; // four decimals printed
  ASSERT_GT(reading.moves().size(), 3u);
  const Curve &arc = reading.moves()[1].curve;
  expect_at(arc.end, {0.0, 1.0, 0.5});
  EXPECT_NEAR(arc.centre.x, 1.5, kRounding_mm);
  EXPECT_NEAR(arc.centre.y, 7.8476, kPrinted_mm);
  EXPECT_NEAR(deg_from_rad(arc.sweep_rad), -24.7114, kPrintedAngle_deg); // derived: 2 asin(1.5/7.01)
  // G15: the axes stand, so the longer tool's tip is 1.0 lower.
  expect_at(reading.moves()[2].curve.end, {30.0, 1.0, -0.5});
  // G16: up to R, then two holes, each: across, down at feed, back.
  expect_path(
      reading, 3,
      {{30, 1, 1.0}, {33, 3, 1.0}, {33, 3, 0.2}, {33, 3, 1.0}, {36, 5, 1.0}, {36, 5, 0.2}, {36, 5, 1.0}});
  EXPECT_EQ(reading.moves()[5].kind, MoveKind::feed);
  EXPECT_EQ(reading.moves()[6].kind, MoveKind::rapid);
  EXPECT_TRUE(reading.moves()[5].in_canned_cycle);
}

// NISTIR 6556, 3.5.16.3, worked example 1 of G81 (G17).
TEST(Report, DrillingReturnsToTheOldHeightUnderG98) {
  const Reading reading = read_good(metric("G0 X1 Y2 Z3\nG90 G81 G98 X4 Y5 Z1.5 R2.8"));
  expect_path(reading, 1, {{4, 5, 3}, {4, 5, 2.8}, {4, 5, 1.5}, {4, 5, 3}});
  const MoveKind kKinds[] = {MoveKind::rapid, MoveKind::rapid, MoveKind::feed, MoveKind::rapid};
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_EQ(reading.moves()[i + 1].kind, kKinds[i]);
}

// NISTIR 6556, 3.5.16.3, worked example 2 of G81 (G18).
TEST(Report, IncrementalDrillingRepeatsThreeTimes) {
  const Reading reading = read_good(metric("G0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3"));
  expect_path(reading, 1,
              {{1, 2, 4.8},
               {5, 7, 4.8},
               {5, 7, 4.2},
               {5, 7, 4.8},
               {9, 12, 4.8},
               {9, 12, 4.2},
               {9, 12, 4.8},
               {13, 17, 4.8},
               {13, 17, 4.2},
               {13, 17, 4.8}});
}

// NISTIR 6556, 3.5.18, worked text (G19): parameter 5211 is -3, then -5.
TEST(Report, CoordinateShiftIsKeptInParameter5211) {
  const Reading reading = read_good(metric("G0 X4\nG92 x7\nG0 Z#5211\nG92 x9\nG0 Z#5211\nX9 Y1\nX0"));
  ASSERT_EQ(reading.moves().size(), 5u);
  EXPECT_EQ(reading.moves()[1].curve.end.z, -3.0);
  EXPECT_EQ(reading.moves()[2].curve.end.z, -5.0);
  EXPECT_EQ(reading.moves()[3].curve.end.x, 4.0); // called 9, it is where X was
  EXPECT_EQ(reading.moves()[4].curve.end.x, -5.0);
}

// NISTIR 6556, 3.5.5, worked text (G20).
TEST(Report, OriginOfSystemOneIsSetForTheNamedAxesOnly) {
  const Reading reading = read_good(metric("#5223=8\nG10 L2 P1 x3.5 y17.2\nG0 X#5221 Y#5222 Z#5223"));
  ASSERT_EQ(reading.moves().size(), 1u);
  expect_at(reading.moves()[0].curve.end, {3.5, 17.2, 8.0});
}

// NISTIR 6556, 3.5.19, worked text (G22): in G93, F2 lasts half a minute, whatever the length.
TEST(Report, InverseTimeFeedLastsOneOverFMinutes) {
  const Reading reading = read_good(metric("G0 Z0\nG93 G1 X12 F2\nG1 X12 Y5 F2"));
  ASSERT_EQ(reading.moves().size(), 3u);
  for (std::size_t i = 1; i < 3; ++i) {
    const Move &move = reading.moves()[i];
    EXPECT_NEAR(move.curve.length_mm() / move.feed_mm_per_min, 0.5, kRounding_mm);
  }
}

// NISTIR 6556, 4, sample session: "asim" is an unknown word starting with a (G21).
TEST(Report, MisspeltFunctionIsNamed) {
  const Reading reading = read(metric("G1 x asim[0.5]"));
  ASSERT_EQ(reading.problems.error_count(), 1u) << reading.problem_text();
  EXPECT_TRUE(reading.says("starting with 'a'"));
  EXPECT_EQ(reading.problems.all().back().line, 2);
  EXPECT_EQ(reading.problems.all().back().column, 6);
}

} // namespace
} // namespace asperity::gcode
