// Which short pieces are looked at together.
#include "station_plan.h"
#include "walk_scene.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::test {
namespace {

constexpr double kRadius_mm = 3.0; // a step is 0.5 mm

/// Ends round a circle, so many to a turn.
TimedPath chords(double circle_mm, int per_turn) {
  TimedPath path;
  const auto end = [&](int i) {
    const double a = 2.0 * kPi * i / per_turn;
    return Vec3(circle_mm * std::cos(a), circle_mm * std::sin(a), 0.0);
  };
  for (int i = 0; i < per_turn; ++i)
    path.pieces.push_back(straight(end(i), end(i + 1), 20.0, 0.0));
  return path;
}

TEST(PlannedStations, AreAsManyAsCounted) {
  PathPiece piece = straight({0, 0, 0}, {10, 0, 0}, 20.0, 0.0);
  const auto expect_count = [&](int count) {
    EXPECT_EQ(planned_station_count(piece, kRadius_mm), count);
    EXPECT_EQ(planned_stations(piece, kRadius_mm).size(), static_cast<std::size_t>(count));
    EXPECT_EQ(planned_stations(piece, kRadius_mm).back(), 1.0);
  };
  expect_count(20); // a step each
  // From and to a stop 20^2 / (2 * 100) = 2 mm each, with half a step: 8 + 12 + 8.
  piece.v_in_mm_per_s = piece.v_out_mm_per_s = 0.0, piece.acceleration_mm_per_s2 = 100.0;
  expect_count(28);
  piece.length_mm = 0.0; // a dwell
  expect_count(1);
}

TEST(LastInStep, TakesWhatFitsIntoAStep) {
  const TimedPath path = chords(31.0, 974); // 0.2 mm
  EXPECT_EQ(last_in_step(path, 0, kRadius_mm), 1U);
  EXPECT_EQ(last_in_step(path, 0, 10.0), 7U);
  EXPECT_EQ(last_in_step(path, 0, 1.0), 0U);
  EXPECT_EQ(last_in_step(path, 973, kRadius_mm), 973U) << "the last piece of all";
}

TEST(LastInStep, EndsAtCornersStopsAndChanges) {
  const TimedPath even = chords(31.0, 9740); // 0.02 mm
  const std::uint32_t all = last_in_step(even, 100, kRadius_mm);
  EXPECT_NEAR(all, 100 + 24, 1);
  const auto last_with = [&](const auto &change) {
    TimedPath path = even;
    change(path.pieces[110]);
    return last_in_step(path, 100, kRadius_mm);
  };
  EXPECT_EQ(last_with([](PathPiece &) {}), all);
  EXPECT_EQ(
      last_with([](PathPiece &p) { p.curve = Curve::line(p.curve.begin, p.curve.begin + Vec3(0, 0, 0.02)); }),
      109U);
  EXPECT_EQ(last_with([](PathPiece &p) { p.v_out_mm_per_s = 0.0; }), 109U);
  EXPECT_EQ(last_with([](PathPiece &p) { p.length_mm = 0.0; }), 109U) << "a dwell";
  EXPECT_EQ(last_with([](PathPiece &p) { p.tool = 2; }), 109U);
  EXPECT_EQ(last_with([](PathPiece &p) { p.kind = MoveKind::rapid; }), 109U);
  EXPECT_EQ(last_with([](PathPiece &p) { p.spindle_rpm = 12000.0; }), 109U);
}

TEST(LastInStep, EndsWhereSmallTurnsAddUp) {
  const TimedPath tight = chords(1.0, 314); // 0.02 mm and 0.02 rad each
  EXPECT_LE(last_in_step(tight, 0, kRadius_mm), 5U);
}

TEST(RunStraight, MeasuresTheSagitta) {
  const TimedPath path = chords(31.0, 974);
  const double half_mm = 31.0 * std::sin(2.0 * kPi / 974),
               sagitta_mm = 31.0 - std::sqrt(31.0 * 31.0 - half_mm * half_mm);
  EXPECT_TRUE(run_straight(path, 0, 1, 1.001 * sagitta_mm));
  EXPECT_FALSE(run_straight(path, 0, 1, 0.999 * sagitta_mm));
}

} // namespace
} // namespace asperity::test
