// Checks speed and time along a piece against the equations of uniform acceleration.
#include "program_builder.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

// A handful of floating-point operations on numbers of order one to a hundred.
constexpr double kRounding = 1e-12;

// Textbook: from rest over d to rest with cruise v takes d/v + v/a, and v^2/(2a) of distance at each end.
TEST(Profile, TrapezoidTakesDistanceOverSpeedPlusSpeedOverAcceleration) {
  const TimedPath path = plan(ProgramBuilder().feed_to({10, 0, 0}, 1200), even_machine(400));
  ASSERT_EQ(path.pieces.size(), 1u);
  const PathPiece &piece = path.pieces[0];
  EXPECT_NEAR(path.duration_s, 10.0 / 20.0 + 20.0 / 400.0, kRounding);
  EXPECT_NEAR(piece.v_peak_mm_per_s, 20.0, kRounding);
  const double ramp = 20.0 * 20.0 / (2 * 400.0);
  EXPECT_NEAR(piece.speed_at(ramp), 20.0, kRounding);
  EXPECT_NEAR(piece.speed_at(ramp / 4), 10.0, kRounding); // v grows with the root of the distance
  EXPECT_NEAR(piece.speed_at(10 - ramp / 4), 10.0, kRounding);
  EXPECT_NEAR(piece.time_at(ramp), 20.0 / 400.0, kRounding);
  EXPECT_NEAR(piece.time_at(5), path.duration_s / 2, kRounding);
  EXPECT_NEAR(piece.time_at(10), path.duration_s, kRounding);
}

// Textbook: too short to reach the feed, d takes 2 sqrt(d/a) and peaks at sqrt(a d).
TEST(Profile, TriangleTakesTwiceRootOfDistanceOverAcceleration) {
  const TimedPath path = plan(ProgramBuilder().feed_to({0, 0.5, 0}, 1200), even_machine(400));
  EXPECT_NEAR(path.duration_s, 2 * std::sqrt(0.5 / 400), kRounding);
  EXPECT_NEAR(path.pieces[0].v_peak_mm_per_s, std::sqrt(400 * 0.5), kRounding);
}

// Controller documentation gives the shortest move that still reaches feed F at acceleration A as F^2/A, with
// the worked value 1 in/s, 10 in/s^2 -> 0.1 in.
TEST(Profile, ShortestMoveThatReachesFeedIsFeedSquaredOverAcceleration) {
  const double inch = mm_from_inch(1.0);
  const Machine machine = even_machine(10 * inch);
  const double feed = mm_per_min_from_mm_per_s(inch);
  const TimedPath just = plan(ProgramBuilder().feed_to({0.1 * inch, 0, 0}, feed), machine);
  EXPECT_NEAR(just.pieces[0].v_peak_mm_per_s, inch, kRounding * inch);
  const TimedPath under = plan(ProgramBuilder().feed_to({0.099 * inch, 0, 0}, feed), machine);
  EXPECT_LT(under.pieces[0].v_peak_mm_per_s, 0.999 * inch);
}

// derived, from S = v^2/(2a): a full stop keeps the speed under 6 mm/s for 2 v/a over v^2/a; values printed
// to whole ms and to 0.01 mm.
TEST(Profile, SlowZoneRoundAFullStopMatchesTable) {
  const struct {
    double acceleration, ms, mm;
  } rows[] = {{50, 240, 0.72}, {250, 48, 0.14}, {500, 24, 0.07}, {1000, 12, 0.04}};
  for (const auto &row : rows) {
    const TimedPath path =
        plan(ProgramBuilder().exact_stop().feed_to({50, 0, 0}, 1200).feed_to({50, 50, 0}, 1200),
             even_machine(row.acceleration));
    const PathPiece &before = path.pieces[0], &after = path.pieces[1];
    const double each_mm = row.mm / 2;
    EXPECT_NEAR(before.speed_at(50 - each_mm), 6.0,
                6.0 * 0.005 / row.mm); // the table's rounding, carried through
    EXPECT_NEAR(after.speed_at(each_mm), 6.0, 6.0 * 0.005 / row.mm);
    const double exact_mm = 6.0 * 6.0 / (2 * row.acceleration);
    const double slow_s = before.duration_s - before.time_at(50 - exact_mm) + after.time_at(exact_mm);
    EXPECT_NEAR(slow_s * 1e3, row.ms, 1e-9);
  }
}

PathPiece rise_cruise_fall() {
  PathPiece piece;
  piece.curve = Curve::line({0, 0, 0}, {3, 0, 0});
  piece.length_mm = 3;
  piece.acceleration_mm_per_s2 = 300;
  piece.v_in_mm_per_s = 5;
  piece.v_peak_mm_per_s = 25;
  piece.v_out_mm_per_s = 8;
  // v1 + a t = v2 on both slopes; the rest of the length at the peak.
  const double slopes_mm = (25.0 * 25 - 5 * 5) / 600 + (25.0 * 25 - 8 * 8) / 600;
  piece.duration_s = 20.0 / 300 + 17.0 / 300 + (3 - slopes_mm) / 25;
  return piece;
}

TEST(Profile, TimeIsTheIntegralOfOneOverSpeed) {
  const PathPiece piece = rise_cruise_fall();
  // Simpson's rule, cut at the two kinks so that its error stays of fourth order.
  const double kinks[] = {0.0, 1.0, 3.0 - (625.0 - 64.0) / 600, 3.0};
  double time = 0;
  for (int part = 0; part < 3; ++part) {
    const int steps = 2000;
    const double h = (kinks[part + 1] - kinks[part]) / steps;
    for (int i = 0; i < steps; ++i) {
      const double d = kinks[part] + i * h;
      time += h / 6 * (1 / piece.speed_at(d) + 4 / piece.speed_at(d + h / 2) + 1 / piece.speed_at(d + h));
    }
    EXPECT_NEAR(piece.time_at(kinks[part + 1]), time, 1e-10); // Simpson's own error at this step
  }
  EXPECT_NEAR(time, piece.duration_s, 1e-10);
}

TEST(Profile, TimeRisesAndStaysWithinThePiece) {
  const PathPiece piece = rise_cruise_fall();
  double last = -1;
  for (int i = 0; i <= 3000; ++i) {
    const double now = piece.time_at(i * 1e-3);
    EXPECT_GT(now, last);
    last = now;
  }
  EXPECT_EQ(piece.time_at(-1), 0.0);
  EXPECT_EQ(piece.time_at(99), piece.time_at(3));
  EXPECT_NEAR(piece.time_at(3), piece.duration_s, kRounding);
  EXPECT_EQ(piece.speed_at(0), 5.0);
  EXPECT_EQ(piece.speed_at(3), 8.0);
}

} // namespace
} // namespace asperity
