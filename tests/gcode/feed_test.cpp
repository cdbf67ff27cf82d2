// Feeds, speeds, units, modes and what else a move carries; rules of NISTIR 6556 (Kramer, Proctor, Messina
// 2000).
#include "reading.h"

namespace asperity::gcode {
namespace {

const Move &last_move(const Reading &reading) { return reading.moves().back(); }

TEST(Feed, InchesBecomeMillimetres) {
  const Reading reading = read_good("G20\nS1000 M3 F10\nG1 X1 Y-0.5\nM2\n");
  expect_at(last_move(reading).curve.end, {25.4, -12.7, 50});
  EXPECT_EQ(last_move(reading).feed_mm_per_min, 254.0);
}

TEST(Feed, StartUnitIsAnOption) {
  ReadOptions options;
  options.start_in_inch = true;
  const Reading reading = read_good("G0 X1\nM2\n", options);
  EXPECT_EQ(last_move(reading).curve.end.x, 25.4);
  EXPECT_TRUE(reading.says("inches taken"));
}

// NISTIR 6556, table 8: F comes before the units in the order of execution.
TEST(Feed, FeedOnTheLineThatChangesUnitsIsInTheOldOnes) {
  const Reading reading = read_good("G21 S1000 M3\nG20 F10 G1 X1\nM2\n");
  EXPECT_EQ(last_move(reading).feed_mm_per_min, 10.0);
  EXPECT_TRUE(reading.says("F is read in millimetres"));
}

TEST(Feed, FeedPerTurnBecomesMillimetresPerMinute) {
  EXPECT_NEAR(last_move(read_good(metric("G95 F0.05 S12000\nG1 X1"))).feed_mm_per_min, 600.0, 1e-9);
  EXPECT_NEAR(last_move(read_good(metric("G20\nG95 F0.002 S1000\nG1 X1"))).feed_mm_per_min, 50.8, 1e-9);
}

// NISTIR 6556, 3.5.19: along the helix, not along its plan.
TEST(Feed, InverseTimeCountsAlongTheHelix) {
  const Reading reading = read_good(metric("G0 X5 Y0 Z0\nG93 G2 X5 Y0 I-5 Z-40 F4"));
  EXPECT_NEAR(last_move(reading).curve.length_mm() / last_move(reading).feed_mm_per_min, 0.25, kRounding_mm);
  EXPECT_GT(last_move(reading).curve.length_mm(), 50.0); // hypot(31.4, 40) = 50.9
}

TEST(Feed, ModeChangeForgetsTheFeed) {
  EXPECT_TRUE(read(metric("G93 G1 X1 F2\nG94\nG1 X2")).says("a feed move before any F"));
}

TEST(Feed, FeedStaysUntilChangedAndRapidsHaveNone) {
  const Reading reading = read_good(metric("G1 X1\nX2 F300\nG0 X3\nG1 X4"));
  const double kFeeds[] = {600, 300, 0, 300};
  ASSERT_EQ(reading.moves().size(), 4u);
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_EQ(reading.moves()[i].feed_mm_per_min, kFeeds[i]);
}

// NISTIR 6556, 3.6.3: the tool change stops the spindle.
TEST(Feed, SpindleIsKeptWithEachMove) {
  const Reading reading = read_good(metric("G1 X1\nM4 S8000\nG1 X2\nM5\nG0 X3\nM3\nT1 M6\nG0 X4"));
  ASSERT_EQ(reading.moves().size(), 4u);
  EXPECT_EQ(reading.moves()[0].turn, SpindleTurn::clockwise);
  EXPECT_EQ(reading.moves()[0].spindle_rpm, 12000.0);
  EXPECT_EQ(reading.moves()[1].turn, SpindleTurn::counter_clockwise);
  EXPECT_EQ(reading.moves()[1].spindle_rpm, 8000.0);
  EXPECT_EQ(reading.moves()[2].turn, SpindleTurn::off);
  EXPECT_EQ(reading.moves()[2].spindle_rpm, 0.0);
  EXPECT_EQ(reading.moves()[3].turn, SpindleTurn::off);
}

TEST(Feed, PathControlAndToleranceAreKeptWithEachMove) {
  const Reading reading =
      read_good(metric("G0 X1\nG61.1 X2\nG64 P0.02 Q0.01 X3\nX4\nG64 X5\nG61 X6\nG20 G64 P0.001\nX1"));
  const PathControl kControls[] = {PathControl::exact_path, PathControl::exact_stop, PathControl::blend,
                                   PathControl::blend,      PathControl::blend,      PathControl::exact_path,
                                   PathControl::blend};
  const double kTolerances_mm[] = {-1, -1, 0.02, 0.02, -1, -1, 0.0254};
  ASSERT_EQ(reading.moves().size(), 7u);
  for (std::size_t i = 0; i < 7; ++i) {
    EXPECT_EQ(reading.moves()[i].control, kControls[i]) << i;
    EXPECT_NEAR(reading.moves()[i].blend_tolerance_mm, kTolerances_mm[i], kRounding_mm) << i;
  }
}

TEST(Feed, ToleranceAndDwellMayStandOnAnArcsLine) {
  const Reading reading = read_good(metric("G0 X0 Y0 Z0\nG64 P0.02 G2 X10 I5\nG4 P0.5 X0 I-5"));
  EXPECT_EQ(reading.moves()[1].blend_tolerance_mm, 0.02);
  EXPECT_EQ(reading.moves()[2].dwell_s, 0.5);
}

// NISTIR 6556, table 8: the dwell comes before the motion of its line.
TEST(Feed, DwellIsAMoveOfItsOwn) {
  const Reading reading = read_good(metric("G1 X1\nG4 P0.75\nG4 P0\nG1 X2"));
  ASSERT_EQ(reading.moves().size(), 3u);
  EXPECT_EQ(reading.moves()[1].kind, MoveKind::dwell);
  EXPECT_EQ(reading.moves()[1].dwell_s, 0.75);
  EXPECT_EQ(reading.moves()[1].curve.begin, reading.moves()[1].curve.end);
  EXPECT_EQ(reading.moves()[1].line, 3u);
}

TEST(Feed, IncrementalAndAbsoluteWordsMix) {
  const Reading reading = read_good(metric("G0 X10 Y10 Z10\nG91 X-1 Y2\nX-1\nG90 X0"));
  expect_at(reading.moves()[1].curve.end, {9, 12, 10});
  expect_at(reading.moves()[2].curve.end, {8, 12, 10});
  expect_at(last_move(reading).curve.end, {0, 12, 10});
}

TEST(Feed, StopsCoolantAndOverridesMakeNoMove) {
  const Reading reading = read_good(metric("M0\nM1\nM60\nM7\nM8\nM9\nM48\nM49\nG0 X1"), strict());
  EXPECT_EQ(reading.moves().size(), 1u);
}

TEST(Feed, MovesOfNoLengthAreLeftOut) {
  EXPECT_EQ(read_good(metric("G0 X1\nG1 X1\nX1 Y0\nG0 X1\nG1 X2")).moves().size(), 2u);
}

} // namespace
} // namespace asperity::gcode
