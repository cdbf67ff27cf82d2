// Where zero is: work offsets, shifts, tool lengths, homes; rules of NISTIR 6556 (Kramer, Proctor, Messina
// 2000).
#include "reading.h"

#include <fmt/format.h>

namespace asperity::gcode {
namespace {

Vec3 last_end(const Reading &reading) { return reading.moves().back().curve.end; }

TEST(Offset, ProgramStartsAtHome) {
  ReadOptions options;
  options.home_mm = {1, 2, 30};
  const Reading reading = read_good(metric("G0 X5"), options);
  expect_at(reading.moves()[0].curve.begin, {1, 2, 30});
  expect_at(last_end(reading), {5, 2, 30});
}

// NISTIR 6556, 3.5.13: systems are origins in machine coordinates; the output is in the first one.
TEST(Offset, OtherSystemsAreSeenFromTheFirst) {
  const Reading reading = read_good(
      metric("G10 L2 P1 X100 Y200 Z-40\nG10 L2 P2 X110 Y220 Z-40\nG0 X1 Y1 Z1\nG55 X1 Y1\nG54 X1 Y1"));
  expect_at(reading.moves()[0].curve.end, {1, 1, 1});
  expect_at(reading.moves()[1].curve.end, {11, 21, 1});
  expect_at(reading.moves()[2].curve.end, {1, 1, 1});
}

TEST(Offset, AllNineSystemsHaveTheirParameters) {
  const char *kNames[] = {"G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"};
  for (int i = 1; i < 9; ++i) {
    const std::string setting = fmt::format("#{}={}", 5221 + 20 * i, i);
    const Reading reading = read_good(metric(fmt::format("{}\n{} G0 X10 Y#5220", setting, kNames[i])));
    expect_at(last_end(reading), {10.0 + i, 1.0, 50.0}); // #5220 is read before the line takes effect
  }
}

TEST(Offset, MovingTheFirstSystemLaterMovesThePath) {
  const Reading reading = read_good(metric("G0 X1 Y1\nG10 L2 P1 X5\nG0 X1"));
  expect_at(last_end(reading), {6, 1, 50});
}

// NISTIR 6556, 3.5.12: G53 is not modal and ignores G92 and G54.
TEST(Offset, MachineCoordinatesIgnoreOffsets) {
  const Reading reading =
      read_good(metric("G10 L2 P1 X-100 Z-60\nG0 X1 Y0 Z1\nG92 X50\nG91 G53 G0 Z0\nG90 X50"));
  expect_at(reading.moves()[1].curve.end, {1, 0, 60});
  expect_at(last_end(reading), {1, 0, 60}); // X50 is where it is: no move
  EXPECT_EQ(reading.moves().size(), 2u);
}

// NISTIR 6556, 3.5.18: G92.2 keeps the parameters and G92.3 takes them up; G92.1 clears them.
TEST(Offset, ShiftCanBeDroppedAndRestored) {
  const std::string shifted = "G0 X4\nG92 X1\n"; // X reads 3 less
  expect_at(last_end(read_good(metric(shifted + "G0 X0"))), {3, 0, 50});
  expect_at(last_end(read_good(metric(shifted + "G92.2\nG0 X0"))), {0, 0, 50});
  expect_at(last_end(read_good(metric(shifted + "G92.2\nG92.3\nG0 X0"))), {3, 0, 50});
  expect_at(last_end(read_good(metric(shifted + "G92.1\nG92.3\nG0 X0"))), {0, 0, 50});
}

TEST(Offset, ToolLengthIsTakenOut) {
  ReadOptions options;
  options.length_offset_mm = {{1, 80.0}, {2, 95.0}};
  const Reading reading = read_good(metric("T1 M6 G43 H1\nG0 Z5\nT2 M6 G43 H2\nG0 Z5\nG49\nG0 X1"), options);
  ASSERT_EQ(reading.moves().size(), 3u);
  expect_at(reading.moves()[0].curve.begin, {0, 0, 50}); // home, whatever the tool
  expect_at(reading.moves()[0].curve.end, {0, 0, 5});
  expect_at(reading.moves()[1].curve.begin, {0, 0, -10}); // the second tool is 15 mm longer
  expect_at(reading.moves()[1].curve.end, {0, 0, 5});
  expect_at(reading.moves()[2].curve.end, {1, 0, 100});
}

// Under G92 before any move the operator has set the tip by hand.
TEST(Offset, ShiftBeforeTheFirstMoveSaysWhereTheTipIs) {
  const Reading reading = read_good(metric("G92 X0 Y0 Z0\nG0 Z5\nX10"));
  EXPECT_TRUE(reading.says("G92 before the first move"));
  expect_at(reading.moves()[0].curve.begin, {0, 0, 0});
  expect_at(last_end(reading), {10, 0, 5});
}

// NISTIR 6556, 3.5.8: by way of the programmed point, home; named axes only (all in strict reading, as the
// report).
TEST(Offset, HomeIsReachedByWayOfTheNamedPoint) {
  const std::string text = metric("G0 X10 Y10 Z1\nG91 G28 Z2");
  const Reading reading = read_good(text);
  ASSERT_EQ(reading.moves().size(), 3u);
  expect_at(reading.moves()[1].curve.end, {10, 10, 3});
  expect_at(reading.moves()[2].curve.end, {10, 10, 50});
  expect_at(last_end(read_good(text, strict())), {0, 0, 50});
  expect_at(last_end(read_good(metric("G0 X10 Y10 Z1\nG28"))), {0, 0, 50});
}

TEST(Offset, HomesComeFromParametersWhenSet) {
  expect_at(last_end(read_good(metric("#5161=3 #5162=4 #5163=90\nG0 X1\nG28"))), {3, 4, 90});
  expect_at(last_end(read_good(metric("#5181=3 #5182=4 #5183=90\nG0 X1\nG30"))), {3, 4, 90});
  // In machine coordinates: an origin of G54 at Z -60 makes 0 read 60.
  expect_at(last_end(read_good(metric("#5161=3 #5163=0\nG10 L2 P1 Z-60\nG0 X1\nG28"))), {3, 0, 60});
}

// Lengths among the parameters follow the unit in force.
TEST(Offset, ParametersAreTurnedOverWithTheUnits) {
  const Reading reading = read_good(metric("G10 L2 P2 X25.4\nG20\nG0 X#5241\nG55 X0"));
  EXPECT_NEAR(reading.moves()[0].curve.end.x, 25.4, kRounding_mm);
  EXPECT_EQ(reading.moves().size(), 1u); // G55 X0 is where X#5241 was
}

} // namespace
} // namespace asperity::gcode
