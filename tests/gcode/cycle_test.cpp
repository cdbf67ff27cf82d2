// Canned cycles unfolded, against the step lists of NISTIR 6556 (Kramer, Proctor, Messina 2000), 3.5.16.
#include "reading.h"

namespace asperity::gcode {
namespace {

/// One expected step: r rapid, f feed, d dwell; the height reached (or seconds waited) and the spindle's
/// sense.
struct Step {
  char kind;
  double height_or_s;
  SpindleTurn turn = SpindleTurn::clockwise;
};

char letter_of(MoveKind kind) { return kind == MoveKind::rapid ? 'r' : kind == MoveKind::feed ? 'f' : 'd'; }

/// Reads a cycle line with the tip at (0, 0, 10) and compares what follows the way across to the hole.
void expect_steps(const std::string &cycle, const std::vector<Step> &wanted) {
  const Reading reading = read_good(metric("G0 X0 Y0 Z10\n" + cycle), strict());
  SCOPED_TRACE(cycle);
  constexpr std::size_t kBefore = 2; // G0, and across
  ASSERT_EQ(reading.moves().size(), kBefore + wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const Move &move = reading.moves()[kBefore + i];
    EXPECT_EQ(letter_of(move.kind), wanted[i].kind) << i;
    EXPECT_NEAR(wanted[i].kind == 'd' ? move.dwell_s : move.curve.end.z, wanted[i].height_or_s, kRounding_mm)
        << i;
    EXPECT_EQ(move.turn, wanted[i].turn) << i;
    EXPECT_TRUE(move.in_canned_cycle);
    EXPECT_EQ(plan(move.curve.end), Vec2(5, 0)) << i;
  }
}

TEST(Cycle, DrillingAndSpotting) {
  expect_steps("G81 X5 Z-3 R2", {{'r', 2}, {'f', -3}, {'r', 10}});
  expect_steps("G99 G81 X5 Z-3 R2", {{'r', 2}, {'f', -3}, {'r', 2}});
  expect_steps("G82 X5 Z-3 R2 P0.5", {{'r', 2}, {'f', -3}, {'d', 0.5}, {'r', 10}});
}

// The way back down stops 0.010 inch = 0.254 mm above the last bottom (from memory).
TEST(Cycle, PeckDrillingClearsTheHoleAfterEachPeck) {
  expect_steps(
      "G83 X5 Z-3 R2 Q2",
      {{'r', 2}, {'f', 0}, {'r', 2}, {'r', 0.254}, {'f', -2}, {'r', 2}, {'r', -1.746}, {'f', -3}, {'r', 10}});
  expect_steps("G83 X5 Z-3 R2 Q5", {{'r', 2}, {'f', -3}, {'r', 10}});
}

TEST(Cycle, TappingComesBackTurningTheOtherWay) {
  expect_steps("G84 X5 Z-3 R2", {{'r', 2}, {'f', -3}, {'f', 10, SpindleTurn::counter_clockwise}});
}

TEST(Cycle, BoringWithFeedOutWithStopAndWithDwell) {
  expect_steps("G85 X5 Z-3 R2", {{'r', 2}, {'f', -3}, {'f', 10}});
  expect_steps("G86 X5 Z-3 R2 P1", {{'r', 2}, {'f', -3}, {'d', 1}, {'r', 10, SpindleTurn::off}});
  expect_steps("G88 X5 Z-3 R2 P1", {{'r', 2}, {'f', -3}, {'d', 1}, {'r', 10, SpindleTurn::off}});
  expect_steps("G89 X5 Z-3 R2 P1", {{'r', 2}, {'f', -3}, {'d', 1}, {'f', 10}});
}

TEST(Cycle, BackBoringStepsAsideWithTheSpindleStopped) {
  const Reading reading = read_good(metric("G0 X0 Y0 Z10\nG87 X5 Z-3 R2 I1 J0.5 K-1"), strict());
  const Vec3 kWay[] = {{6, 0.5, 10}, {6, 0.5, -3}, {5, 0, -3},   {5, 0, -1},
                       {5, 0, -3},   {6, 0.5, -3}, {6, 0.5, 10}, {5, 0, 10}};
  const bool kTurns[] = {true, false, false, true, true, false, false, false};
  ASSERT_EQ(reading.moves().size(), 10u); // G0, across, and these
  for (std::size_t i = 0; i < 8; ++i) {
    expect_at(reading.moves()[2 + i].curve.end, kWay[i]);
    EXPECT_EQ(reading.moves()[2 + i].turn != SpindleTurn::off, kTurns[i]) << i;
  }
}

TEST(Cycle, HeightsAreKeptForTheNextHoles) {
  const Reading reading = read_good(metric("G0 Z10\nG81 X5 Z-3 R2\nX6\nY7 Z-4\nG80\nG0 X0"), strict());
  std::vector<double> bottoms;
  for (const Move &move : reading.moves()) {
    if (move.kind == MoveKind::feed)
      bottoms.push_back(move.curve.end.z);
  }
  EXPECT_EQ(bottoms, (std::vector<double>{-3, -3, -4}));
  EXPECT_FALSE(reading.moves().back().in_canned_cycle);
}

// Under G99 the row stays at R; the last hole may ask for G98, the height before the row [common practice].
TEST(Cycle, LastHoleOfARowMayReturnToTheFirstHeight) {
  const Reading reading = read_good(metric("G0 Z10\nG99 G81 X5 Z-3 R2\nX6\nG98 X7"), strict());
  EXPECT_EQ(reading.moves().back().curve.end.z, 10.0);
}

TEST(Cycle, AnotherPlaneDrillsAlongItsOwnAxis) {
  const Reading reading = read_good(metric("G0 X0 Y10 Z0\nG18 G81 X5 Z1 Y-3 R2"), strict());
  ASSERT_EQ(reading.moves().size(), 5u);
  expect_at(reading.moves()[2].curve.end, {5, 2, 1});
  expect_at(reading.moves()[3].curve.end, {5, -3, 1});
  expect_at(reading.moves()[4].curve.end, {5, 10, 1});
}

TEST(Cycle, WorksInInchesAndInAShiftedFrame) {
  const Reading reading = read_good("G20 F10 S500 M3\nG0 X0 Y0 Z1\nG92 Z2\nG81 X1 Z0.5 R1.5\nM2\n",
                                    strict()); // Z 2 is Z 1 of before
  ASSERT_EQ(reading.moves().size(), 5u);
  expect_at(reading.moves()[2].curve.end, {25.4, 0, 12.7});
  expect_at(reading.moves()[3].curve.end, {25.4, 0, -12.7});
  expect_at(reading.moves()[4].curve.end, {25.4, 0, 25.4});
}

} // namespace
} // namespace asperity::gcode
