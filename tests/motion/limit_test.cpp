// Checks axis limits along lines, arcs and helices, and the centripetal limit.
#include "program_builder.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

constexpr double kRounding = 1e-11;

/// Different on every axis, so that no two limits can be mixed up.
Machine uneven_machine() {
  Machine machine;
  machine.acceleration_mm_per_s2 = {400, 300, 100};
  machine.max_feed_mm_per_min = {6000, 4500, 1200}; // 100, 75, 20 mm/s
  machine.rapid_mm_per_min = 5400;                  // 90 mm/s
  return machine;
}

/// Long enough to reach any feed.
PathPiece only_piece(const ProgramBuilder &builder, const Machine &machine) {
  const TimedPath path = plan(builder, machine);
  EXPECT_EQ(path.pieces.size(), 1u);
  return path.pieces.front();
}

TEST(Limit, FeedIsLimitedByTheAxisThatRunsOutFirst) {
  const Machine machine = uneven_machine();
  const double fast = 30000;
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({500, 0, 0}, fast), machine).v_peak_mm_per_s, 100,
              kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({0, -500, 0}, fast), machine).v_peak_mm_per_s, 75,
              kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({0, 0, 500}, fast), machine).v_peak_mm_per_s, 20,
              kRounding);
  // 3-4-5 triangle: y moves at 0.8 of the path speed, so 75/0.8; x at 0.6 would allow more.
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({300, 400, 0}, fast), machine).v_peak_mm_per_s, 93.75,
              kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({400, 0, -300}, fast), machine).v_peak_mm_per_s, 20 / 0.6,
              kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder().feed_to({500, 0, 0}, 1200), machine).v_peak_mm_per_s, 20,
              kRounding);
}

TEST(Limit, RapidHasItsOwnSpeedWithinTheAxes) {
  const Machine machine = uneven_machine();
  EXPECT_NEAR(only_piece(ProgramBuilder().rapid_to({500, 0, 0}), machine).v_peak_mm_per_s, 90, kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder().rapid_to({0, 500, 0}), machine).v_peak_mm_per_s, 75, kRounding);
}

TEST(Limit, AccelerationOfALineKeepsEachAxisWithinItsOwn) {
  const Machine machine = uneven_machine();
  const auto acceleration = [&](Vec3 end) {
    return only_piece(ProgramBuilder().feed_to(end, 600), machine).acceleration_mm_per_s2;
  };
  EXPECT_NEAR(acceleration({500, 0, 0}), 400, kRounding);
  EXPECT_NEAR(acceleration({0, 0, 50}), 100, kRounding);
  EXPECT_NEAR(acceleration({300, 400, 0}), 300 / 0.8, kRounding);
  EXPECT_NEAR(acceleration({400, 0, 300}), 100 / 0.6, kRounding);
}

// Physics: v^2/r <= a.
TEST(Limit, ArcSpeedIsRootOfAccelerationTimesRadius) {
  for (const double radius : {0.5, 2.0, 8.0}) {
    const PathPiece piece =
        only_piece(ProgramBuilder({radius, 0, 0}).arc({0, 0}, 2 * kPi * 3, 60000), even_machine(400));
    EXPECT_NEAR(piece.v_peak_mm_per_s, std::sqrt(400 * radius), kRounding);
  }
  // An arc wide enough leaves the feed alone.
  const PathPiece wide =
      only_piece(ProgramBuilder({50, 0, 0}).arc({0, 0}, -2 * kPi, 1200), even_machine(400));
  EXPECT_NEAR(wide.v_peak_mm_per_s, 20, kRounding);
}

TEST(Limit, ArcUsesTheWeakerOfItsTwoAxes) {
  const PathPiece piece =
      only_piece(ProgramBuilder({10, 0, 0}).arc({0, 0}, 2 * kPi, 60000), uneven_machine());
  EXPECT_NEAR(piece.acceleration_mm_per_s2, 300, kRounding);
  EXPECT_NEAR(piece.v_peak_mm_per_s, std::sqrt(300.0 * 10), kRounding);
}

TEST(Limit, ArcFeedIsLimitedInItsWorstDirection) {
  Machine machine = uneven_machine();
  machine.acceleration_mm_per_s2 = Vec3(1e6);
  const double fast = 30000;
  // A whole circle passes through the y direction: 75 mm/s.
  EXPECT_NEAR(only_piece(ProgramBuilder({100, 0, 0}).arc({0, 0}, 2 * kPi, fast), machine).v_peak_mm_per_s, 75,
              kRounding);
  // 60 deg about the top of the circle, clockwise and back: y moves at sin 30 deg at most, x at 1: 100 mm/s.
  const Vec3 left(-50, 100 * std::sqrt(0.75), 0), right(50, 100 * std::sqrt(0.75), 0);
  EXPECT_NEAR(only_piece(ProgramBuilder(left).arc({0, 0}, -kPi / 3, fast), machine).v_peak_mm_per_s, 100,
              kRounding);
  EXPECT_NEAR(only_piece(ProgramBuilder(right).arc({0, 0}, kPi / 3, fast), machine).v_peak_mm_per_s, 100,
              kRounding);
}

// Physics: a helix of radius r and slope angle g has radius of curvature r / cos^2 g.
TEST(Limit, HelixSpeedFollowsItsRadiusOfCurvature) {
  const double radius = 2, turns = 5, rise = 2 * kPi * radius * turns * 0.75; // slope 3/4: cos g = 0.8
  const PathPiece piece =
      only_piece(ProgramBuilder({radius, 0, 0}).arc({0, 0}, 2 * kPi * turns, 60000, rise), even_machine(400));
  EXPECT_NEAR(piece.acceleration_mm_per_s2, 400, kRounding);
  EXPECT_NEAR(piece.v_peak_mm_per_s, std::sqrt(400 * radius / (0.8 * 0.8)), kRounding);
}

TEST(Limit, HelixKeepsTheZAxisWithinItsLimits) {
  const double radius = 200, rise = 2 * kPi * radius * 0.75; // z moves at 0.6 of the path speed
  const PathPiece piece =
      only_piece(ProgramBuilder({radius, 0, 0}).arc({0, 0}, 2 * kPi, 60000, -rise), uneven_machine());
  EXPECT_NEAR(piece.v_peak_mm_per_s, 20 / 0.6, kRounding);
  EXPECT_NEAR(piece.acceleration_mm_per_s2, 100 / 0.6, kRounding);
}

// Arcs and helices in tilted planes, clockwise and back, against the largest share of each axis found by
// sampling.
TEST(Limit, TiltedHelixFeedMatchesSampling) {
  Machine machine = uneven_machine();
  machine.acceleration_mm_per_s2 = Vec3(1e9);
  for (const double sweep : {0.4, -0.4, 1.7, -2.5, 4.0, -5.5, 6.2})
    for (const double start : {-3.0, -1.2, 0.3, 2.0})
      for (const double rise : {0.0, 90.0, -90.0}) {
        Move move;
        Curve &arc = move.curve;
        arc.axis_x = glm::normalize(Vec3(1, 2, -0.5));
        arc.axis_y = glm::normalize(glm::cross(arc.axis_x, Vec3(0.3, -1, 2)));
        arc.rise = rise * glm::cross(arc.axis_x, arc.axis_y);
        arc.radius_mm = 50;
        arc.start_rad = start;
        arc.sweep_rad = sweep;
        arc.begin = arc.point(0);
        arc.end = arc.point(1);
        move.kind = MoveKind::feed;
        move.feed_mm_per_min = 1e6;
        Program program;
        program.moves.push_back(move);
        double limit = 1e9;
        for (int i = 0; i <= 4000; ++i)
          for (int axis = 0; axis < 3; ++axis)
            limit = std::min(limit, machine.max_feed_mm_per_min[axis] / 60 * arc.length_mm() /
                                        std::abs(arc.velocity(i / 4000.0)[axis]));
        // Sampling misses the worst angle by at most half a step of 6.2/4000 rad: 3e-7 of the share.
        EXPECT_NEAR(plan(program, machine).pieces[0].v_peak_mm_per_s / limit, 1.0, 1e-6);
      }
}

TEST(Limit, AccelerationSwitchedOffRunsAtTheProgrammedFeed) {
  Effects effects;
  effects.acceleration = false;
  const Program program = ProgramBuilder()
                              .rapid_to({60, 0, 0})
                              .feed_to({50, 0, -3}, 1200)
                              .dwell(0.5)
                              .arc({50, 1}, kPi, 2400)
                              .program();
  const TimedPath path = plan(program, uneven_machine(), effects);
  double sum = 0;
  for (const PathPiece &piece : path.pieces) {
    EXPECT_EQ(piece.v_in_mm_per_s, piece.feed_mm_per_s);
    EXPECT_EQ(piece.v_peak_mm_per_s, piece.feed_mm_per_s);
    EXPECT_EQ(piece.v_out_mm_per_s, piece.feed_mm_per_s);
    EXPECT_EQ(piece.speed_at(piece.length_mm / 3), piece.feed_mm_per_s);
    const double expected = piece.kind == MoveKind::dwell ? 0.5 : piece.length_mm / piece.feed_mm_per_s;
    EXPECT_NEAR(piece.duration_s, expected, 1e-12);
    EXPECT_NEAR(piece.time_at(piece.length_mm), piece.kind == MoveKind::dwell ? 0.0 : expected, 1e-12);
    sum += expected;
  }
  EXPECT_EQ(path.pieces[0].feed_mm_per_s, 90.0);
  EXPECT_EQ(path.pieces[3].feed_mm_per_s, 40.0);
  EXPECT_NEAR(path.duration_s, sum, 1e-12);
}

} // namespace
} // namespace asperity
