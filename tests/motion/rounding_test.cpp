// Checks corners rounded under path blending: shape, tolerance, place and speed of the arcs.
#include "program_builder.h"

#include "asperity/base/units.h"
#include "asperity/motion/corner.h"

#include <gtest/gtest.h>

#include <random>

namespace asperity {
namespace {

// Coordinates of some tens of mm, a few operations each.
constexpr double kPlace_mm = 1e-9;

ProgramBuilder corner_program(double tolerance_mm, Vec3 in, Vec3 out) {
  ProgramBuilder builder(Vec3(3, -4, 5));
  builder.blend(tolerance_mm).feed_to(Vec3(3, -4, 5) + in, 1200).feed_to(Vec3(3, -4, 5) + in + out, 1800);
  return builder;
}

double nearest_mm(const Curve &curve, Vec3 p) {
  double nearest = 1e9;
  for (int i = 0; i <= 1000; ++i)
    nearest = std::min(nearest, glm::distance(curve.point(i / 1000.0), p));
  return nearest;
}

void expect_smooth(const LargeArray<PathPiece> &pieces) {
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const Curve &a = pieces[i - 1].curve, &b = pieces[i].curve;
    EXPECT_LT(glm::distance(a.point(1), b.point(0)), kPlace_mm) << "piece " << i;
    EXPECT_EQ(a.end, b.begin) << "piece " << i;
    EXPECT_LT(turn_between_rad(a.velocity(1), b.velocity(0)), 1e-9) << "piece " << i;
  }
}

// Path blending with P in the sense of controller documentation: the path passes no farther than P from the
// corner.
TEST(Rounding, ArcPassesToleranceFromCorner) {
  const Vec3 legs[][2] = {{{30, 0, 0}, {0, 20, 0}}, {{30, 0, 0}, {0, -20, 0}}, {{0, 0, -9}, {15, 0, 0}},
                          {{5, 6, 7}, {-3, 8, -2}}, {{9, 1, 0}, {-9, 1.5, 0}}, {{90, 0, 3}, {90, 2, 0}}};
  for (const auto &leg : legs)
    for (const double tolerance : {0.002, 0.05, 0.1}) {
      const ProgramBuilder builder = corner_program(tolerance, leg[0], leg[1]);
      const TimedPath path = plan(builder, even_machine(400));
      ASSERT_EQ(path.pieces.size(), 3u);
      EXPECT_NEAR(nearest_mm(path.pieces[1].curve, builder.program().moves[0].curve.end), tolerance,
                  kPlace_mm);
      expect_smooth(path.pieces);
    }
}

TEST(Rounding, ArcLiesInThePlaneOfTheLegsAndKeepsItsRadius) {
  const Vec3 in(5, 6, 7), out(-3, 8, -2), normal = glm::normalize(glm::cross(in, out));
  const TimedPath path = plan(corner_program(0.1, in, out), even_machine(400));
  const Curve &arc = path.pieces[1].curve;
  EXPECT_NEAR(arc.radius_mm, corner_radius_mm(0.1, turn_between_rad(in, out)), kPlace_mm);
  for (double u = 0; u <= 1; u += 0.125) {
    EXPECT_NEAR(glm::dot(arc.point(u) - arc.begin, normal), 0.0, kPlace_mm);
    EXPECT_NEAR(glm::distance(arc.point(u), arc.centre), arc.radius_mm, kPlace_mm);
  }
  EXPECT_LT(glm::distance(arc.point(0), arc.begin), kPlace_mm);
  EXPECT_LT(glm::distance(arc.point(1), arc.end), kPlace_mm);
}

TEST(Rounding, LevelCornerBecomesAPlanArcRunTheWayItTurns) {
  for (const double side : {1.0, -1.0}) {
    const Curve arc =
        plan(corner_program(0.1, {30, 0, 0}, {0, 20 * side, 0}), even_machine(400)).pieces[1].curve;
    EXPECT_TRUE(arc.is_plan_arc());
    EXPECT_EQ(arc.axis_x, Vec3(1, 0, 0));
    EXPECT_EQ(arc.axis_y, Vec3(0, 1, 0));
    EXPECT_NEAR(arc.sweep_rad, side * kPi / 2, 1e-12);
  }
}

// Physics: v^2/r <= a; the corner speed by the junction rule with the deviation P is the same number.
TEST(Rounding, SpeedThroughTheArcIsItsCentripetalLimit) {
  const TimedPath path = plan(corner_program(0.02, {30, 0, 0}, {0, 30, 0}), even_machine(400));
  const PathPiece &arc = path.pieces[1];
  const double v = std::sqrt(400 * 0.02 * (1 + std::sqrt(2.0)));
  EXPECT_NEAR(arc.v_in_mm_per_s, v, 1e-9);
  EXPECT_NEAR(arc.v_peak_mm_per_s, v, 1e-9);
  EXPECT_NEAR(arc.v_out_mm_per_s, v, 1e-9);
  EXPECT_EQ(arc.move, 1u);
  EXPECT_EQ(arc.line, 2u);
  EXPECT_EQ(arc.feed_mm_per_s, 30.0);
  EXPECT_EQ(path.pieces[2].move, 1u);
}

TEST(Rounding, ArcTakesAtMostHalfOfEachLeg) {
  const TimedPath path = plan(corner_program(5.0, {2, 0, 0}, {0, 30, 0}), even_machine(400));
  ASSERT_EQ(path.pieces.size(), 3u);
  EXPECT_NEAR(path.pieces[0].length_mm, 1.0, kPlace_mm);
  EXPECT_NEAR(path.pieces[1].curve.radius_mm, 1.0, kPlace_mm); // square corner: radius = trim
  EXPECT_NEAR(path.pieces[2].length_mm, 29.0, kPlace_mm);
  expect_smooth(path.pieces);
}

TEST(Rounding, LegUsedUpByBothCornersLeavesNoPiece) {
  ProgramBuilder builder;
  builder.blend(5).feed_to({30, 0, 0}, 1200).feed_to({30, 2, 0}, 1200).feed_to({60, 2, 0}, 1200);
  const TimedPath path = plan(builder, even_machine(400));
  ASSERT_EQ(path.pieces.size(), 4u);
  EXPECT_NEAR(glm::distance(path.pieces[1].curve.end, Vec3(30 + 0.0, 1, 0)), 0, kPlace_mm);
  EXPECT_LT(glm::distance(path.pieces[1].curve.end, path.pieces[2].curve.begin), kPlace_mm);
  EXPECT_NEAR(path.pieces[1].curve.sweep_rad, kPi / 2, 1e-12);
  EXPECT_NEAR(path.pieces[2].curve.sweep_rad, -kPi / 2, 1e-12);
}

// A stub of line between two arcs has lost the digits of its direction; the path is smooth there all the
// same.
TEST(Rounding, StubLeftBetweenTwoArcsDoesNotSlowThePath) {
  const double tolerance = 0.1, stub = 1e-8, trim = corner_trim_mm(tolerance, kPi / 2);
  const Vec3 along(0.6, 0.8, 0), across(-0.8, 0.6, 0), start(170.1, 230.3, 0);
  const Vec3 first = start + 30.0 * along, second = first + (2 * trim + stub) * across;
  ProgramBuilder builder(start);
  builder.blend(tolerance).feed_to(first, 3000).feed_to(second, 3000).feed_to(second + 30.0 * along, 3000);
  const TimedPath path = plan(builder, even_machine(400));
  ASSERT_EQ(path.pieces.size(), 5u);
  EXPECT_LT(path.pieces[2].length_mm, 2 * stub);
  const double v = std::sqrt(400 * corner_radius_mm(tolerance, kPi / 2));
  for (int joint = 1; joint <= 4; ++joint)
    EXPECT_NEAR(path.pieces[std::size_t(joint)].v_in_mm_per_s, v,
                1e-6); // the turn is square to 1e-14 of its leg
}

TEST(Rounding, CornersStaySharpWhereBlendingDoesNotApply) {
  const auto count = [](const ProgramBuilder &builder, const Machine &machine = even_machine(400)) {
    return plan(builder, machine).pieces.size();
  };
  const Vec3 in(30, 0, 0), out(0, 20, 0);
  EXPECT_EQ(count(corner_program(0.1, in, out)), 3u);
  EXPECT_EQ(count(corner_program(0.0, in, out)), 2u);                // P0: no room to round
  EXPECT_EQ(count(corner_program(-1, in, out)), 2u);                 // no P, and the machine rounds nothing
  EXPECT_EQ(count(corner_program(0.1, in, Vec3(30, 0.002, 0))), 2u); // turn below 1e-4 rad
  EXPECT_EQ(count(corner_program(0.1, in, -in)), 2u);                // straight back
  EXPECT_EQ(count(ProgramBuilder().blend(0.1).feed_to(in, 900).exact_path().feed_to(in + out, 900)), 2u);
  EXPECT_EQ(count(ProgramBuilder().blend(0.1).rapid_to(in).feed_to(in + out, 900)), 2u);
  EXPECT_EQ(count(ProgramBuilder().blend(0.1).feed_to(in, 900).tool(2).feed_to(in + out, 900)), 2u);
  EXPECT_EQ(count(ProgramBuilder().blend(0.1).feed_to(in, 900).dwell(1).feed_to(in + out, 900)), 3u);
  EXPECT_EQ(count(ProgramBuilder().blend(0.1).feed_to(in, 900).arc({20, 0}, 1, 900)), 2u);
  Machine rounds = even_machine(400);
  rounds.blend_tolerance_mm = 0.05;
  EXPECT_EQ(count(corner_program(-1, in, out), rounds), 3u);
  Effects off;
  off.blending = false;
  EXPECT_EQ(plan(corner_program(0.1, in, out).program(), rounds, off).pieces.size(), 2u);
}

TEST(Rounding, AccelerationSwitchedOffKeepsTheRoundedPath) {
  Effects off;
  off.acceleration = false;
  const TimedPath path = plan(corner_program(0.1, {30, 0, 0}, {0, 20, 0}).program(), even_machine(400), off);
  ASSERT_EQ(path.pieces.size(), 3u);
  EXPECT_EQ(path.pieces[1].v_peak_mm_per_s, 30.0);
  EXPECT_NEAR(path.pieces[1].duration_s, path.pieces[1].length_mm / 30.0, 1e-12);
}

TEST(Rounding, LongWanderingPathStaysWholeAndWithinTolerance) {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> step(-3, 3);
  ProgramBuilder builder;
  builder.blend(0.08);
  Vec3 at(0.0);
  for (int i = 0; i < 2000; ++i)
    builder.feed_to(at += Vec3(step(random), step(random), step(random) / 4), 1500);
  const TimedPath path = plan(builder, Machine{});
  EXPECT_GT(path.pieces.size(), 3900u);
  expect_smooth(path.pieces);
  for (const PathPiece &piece : path.pieces) {
    if (!piece.curve.is_line()) {
      const Vec3 corner = builder.program().moves[piece.move].curve.begin;
      EXPECT_LE(nearest_mm(piece.curve, corner), 0.08 + kPlace_mm);
    }
  }
}

} // namespace
} // namespace asperity
