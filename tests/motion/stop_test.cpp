// Checks where the path must stand still, and what counts as cutting time.
#include "program_builder.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

constexpr double kRounding = 1e-12;

/// Speed at the joint between the first and the second piece.
double joint_mm_per_s(const ProgramBuilder &builder, const Machine &machine) {
  const TimedPath path = plan(builder, machine);
  EXPECT_GE(path.pieces.size(), 2u);
  EXPECT_EQ(path.pieces[0].v_out_mm_per_s, path.pieces[1].v_in_mm_per_s);
  return path.pieces[0].v_out_mm_per_s;
}

TEST(Stop, PathBeginsAndEndsAtRest) {
  const TimedPath path =
      plan(ProgramBuilder().feed_to({9, 0, 0}, 900).feed_to({20, 1, 0}, 900), even_machine(400));
  EXPECT_EQ(path.pieces.front().v_in_mm_per_s, 0.0);
  EXPECT_EQ(path.pieces.back().v_out_mm_per_s, 0.0);
  EXPECT_TRUE(plan(ProgramBuilder(), even_machine(400)).pieces.empty());
}

TEST(Stop, ReversalStopsInAnyDirection) {
  for (const Vec3 way : {Vec3(10, 0, 0), Vec3(0, 0, -10), Vec3(3, -5, 7), Vec3(0.1, 0.2, 0.3)}) {
    const double v =
        joint_mm_per_s(ProgramBuilder().feed_to(way, 1200).feed_to(Vec3(0.0), 1200), even_machine(400));
    EXPECT_LT(v, 1e-6); // a turn of pi less one rounding of the direction
  }
}

TEST(Stop, ExactStopStandsStillWhereExactPathRunsOn) {
  const Machine machine = even_machine(400);
  EXPECT_EQ(joint_mm_per_s(ProgramBuilder().exact_stop().feed_to({10, 0, 0}, 1200).feed_to({20, 0, 0}, 1200),
                           machine),
            0.0);
  EXPECT_NEAR(joint_mm_per_s(
                  ProgramBuilder().exact_path().feed_to({10, 0, 0}, 1200).feed_to({20, 0, 0}, 1200), machine),
              20.0, kRounding);
}

TEST(Stop, ExactStopBelongsToTheEndOfItsOwnMove) {
  const TimedPath path = plan(ProgramBuilder()
                                  .feed_to({10, 0, 0}, 1200)
                                  .exact_stop()
                                  .feed_to({20, 0, 0}, 1200)
                                  .exact_path()
                                  .feed_to({30, 0, 0}, 1200),
                              even_machine(400));
  EXPECT_NEAR(path.pieces[0].v_out_mm_per_s, 20.0, kRounding);
  EXPECT_EQ(path.pieces[1].v_out_mm_per_s, 0.0);
}

TEST(Stop, ChangeOfToolSpeedOrTurnStands) {
  const Machine machine = even_machine(400);
  const auto first = [] { return ProgramBuilder().feed_to({10, 0, 0}, 1200); };
  EXPECT_EQ(joint_mm_per_s(first().tool(2).feed_to({20, 0, 0}, 1200), machine), 0.0);
  EXPECT_EQ(joint_mm_per_s(first().spindle(12000).feed_to({20, 0, 0}, 1200), machine), 0.0);
  EXPECT_EQ(joint_mm_per_s(first().spindle(18000, SpindleTurn::counter_clockwise).feed_to({20, 0, 0}, 1200),
                           machine),
            0.0);
  EXPECT_GT(joint_mm_per_s(first().feed_to({20, 0, 0}, 1200), machine), 0.0);
}

TEST(Stop, MoveThatBeginsElsewhereStands) {
  Program program = ProgramBuilder().feed_to({10, 0, 0}, 1200).feed_to({20, 0, 0}, 1200).program();
  program.moves[1].curve = program.moves[1].curve.moved_by({0, 0, 1});
  const TimedPath path = plan(program, even_machine(400));
  EXPECT_EQ(path.pieces[1].v_in_mm_per_s, 0.0);
}

TEST(Stop, DwellStandsForItsTimeAndCountsAsCutting) {
  const TimedPath path = plan(
      ProgramBuilder().rapid_to({30, 0, 0}).feed_to({40, 0, 0}, 1200).dwell(0.7).feed_to({50, 0, 0}, 1200),
      even_machine(400));
  ASSERT_EQ(path.pieces.size(), 4u);
  const PathPiece &dwell = path.pieces[2];
  EXPECT_EQ(dwell.kind, MoveKind::dwell);
  EXPECT_EQ(dwell.length_mm, 0.0);
  EXPECT_EQ(dwell.duration_s, 0.7);
  EXPECT_EQ(dwell.speed_at(0), 0.0);
  EXPECT_EQ(dwell.time_at(0), 0.0);
  EXPECT_EQ(path.pieces[1].v_out_mm_per_s, 0.0);
  EXPECT_EQ(path.pieces[3].v_in_mm_per_s, 0.0);
  EXPECT_NEAR(path.pieces[3].start_s, dwell.start_s + 0.7, kRounding);
  // The last move runs from rest to rest: d/v + v/a.
  EXPECT_NEAR(path.pieces[3].duration_s, 10.0 / 20 + 20.0 / 400, kRounding);
  EXPECT_NEAR(path.cutting_s, path.duration_s - path.pieces[0].duration_s, kRounding);
}

TEST(Stop, MovesOfNoLengthLeaveNoTrace) {
  const Machine machine = even_machine(400);
  const TimedPath with =
      plan(ProgramBuilder().feed_to({10, 0, 0}, 1200).feed_to({10, 0, 0}, 1200).feed_to({20, 5, 0}, 1200),
           machine);
  const TimedPath without =
      plan(ProgramBuilder().feed_to({10, 0, 0}, 1200).feed_to({20, 5, 0}, 1200), machine);
  ASSERT_EQ(with.pieces.size(), 2u);
  EXPECT_EQ(with.pieces[1].move, 2u);
  EXPECT_EQ(with.pieces[1].line, 3u);
  EXPECT_EQ(with.duration_s, without.duration_s);
}

TEST(Stop, PiecesCarryWhatTheirMoveSays) {
  const TimedPath path = plan(
      ProgramBuilder().spindle(15000).tool(3).rapid_to({5, 0, 0}).feed_to({9, 0, 0}, 600), even_machine(400));
  const PathPiece &piece = path.pieces[1];
  EXPECT_EQ(piece.tool, 3);
  EXPECT_EQ(piece.spindle_rpm, 15000.0);
  EXPECT_EQ(piece.turn, SpindleTurn::clockwise);
  EXPECT_EQ(piece.kind, MoveKind::feed);
  EXPECT_EQ(piece.feed_mm_per_s, 10.0);
  EXPECT_EQ(path.pieces[0].feed_mm_per_s, 100.0); // rapid at 6000 mm/min
  EXPECT_EQ(piece.start_s, path.pieces[0].duration_s);
}

// The set-up's own words: tool position in the part frame = program position + program zero + errors.
TEST(Stop, ProgramZeroAndItsErrorsMoveThePath) {
  asperity::Setup setup;
  setup.program_zero_mm = {10, 20, 30};
  setup.z_zero_error_mm = 0.05;
  setup.xy_zero_error_mm = {-0.1, 0.2};
  const Program program = ProgramBuilder().feed_to({5, 0, -1}, 600).arc({5, 5}, 1.0, 600).program();
  Effects effects;
  const Vec3 with = plan_motion(program, even_machine(400), setup, effects).pieces[0].curve.end;
  EXPECT_NEAR(glm::distance(with, Vec3(14.9, 20.2, 29.05)), 0.0, kRounding);
  effects.zero_error = false;
  const TimedPath path = plan_motion(program, even_machine(400), setup, effects);
  EXPECT_NEAR(glm::distance(path.pieces[0].curve.end, Vec3(15, 20, 29)), 0.0, kRounding);
  EXPECT_NEAR(glm::distance(path.pieces[1].curve.centre, Vec3(15, 25, 29)), 0.0, kRounding);
}

} // namespace
} // namespace asperity
