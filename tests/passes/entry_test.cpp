// Entries into levels: angles, pitch, tangent arcs, overlap, start places.
#include "asperity/base/units.h"
#include "passes/planned.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::test {
namespace {

constexpr double kPath_mm = 2 * kPi * 23.0; // rim 40 mm, cutter 6 mm
constexpr double kSlope = 1e-5;             // text of six decimals over some mm of path

/// Centre of the bezel in the program's frame: part (0, 0, 10) is program (-5, 3, 0).
constexpr Vec2 kMiddle{-5.0, 3.0};

double angle_deg(Vec3 p) { return deg_from_rad(std::atan2(p.y - kMiddle.y, p.x - kMiddle.x)); }

LargeArray<Move> plunges(const Program &program) {
  LargeArray<Move> moves;
  for (const Move &move : feed_moves(program))
    if (move.curve.is_line() && glm::distance(plan(move.curve.begin), plan(move.curve.end)) < kText_mm)
      moves.push_back(move);
  return moves;
}

TEST(Entry, RampSinksAtItsAngleAndIsCutLevelAfterwards) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 5.0\nentry = \"ramp\"\nramp_deg = 4.0"));
  double ramped_mm = 0.0;
  for (const Move &move : feed_moves(plan.program)) {
    const double drop_mm = move.curve.begin.z - move.curve.end.z;
    if (move.curve.is_line() || drop_mm < kText_mm)
      continue;
    const double along_mm = std::sqrt(std::pow(move.curve.length_mm(), 2) - drop_mm * drop_mm);
    EXPECT_NEAR(drop_mm / along_mm, std::tan(rad_from_deg(4.0)), kSlope);
    ramped_mm += along_mm;
  }
  EXPECT_NEAR(ramped_mm, 10.0 / std::tan(rad_from_deg(4.0)), 1e-3);
}

TEST(Entry, ZigzagOnAStretchTurnsBackAtItsEnds) {
  const auto plan =
      planned(wall_pass("rim", "stepdown_mm = 5.0\nentry = \"zigzag\"\nzigzag_mm = 15.0\nramp_deg = 4.0"));
  // 5 mm at 15 mm tan 4 deg = 1.049 mm a leg: 5 legs of 1 mm.
  double turn = 0.0;
  int legs = 0;
  for (const Move &move : feed_moves(plan.program)) {
    const double drop_mm = move.curve.begin.z - move.curve.end.z;
    if (move.curve.is_line() || drop_mm < kText_mm)
      continue;
    EXPECT_NEAR(drop_mm, 1.0, kText_mm);
    EXPECT_NEAR(std::hypot(15.0, 1.0), move.curve.length_mm(), 1e-4);
    if (legs % 5 != 0) {
      EXPECT_LT(turn * move.curve.sweep_rad, 0.0) << "leg " << legs;
    }
    turn = move.curve.sweep_rad;
    ++legs;
  }
  EXPECT_EQ(legs, 10);
}

TEST(Entry, ZigzagOfWholeLapsAlternatesAndEndsWithALevelLap) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 2.5\nentry = \"zigzag\""));
  LargeArray<Move> laps;
  for (const Move &move : feed_moves(plan.program))
    if (!move.curve.is_line())
      laps.push_back(move);
  ASSERT_EQ(laps.size(), 5u);
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(laps[i].curve.begin.z - laps[i].curve.end.z, i < 4 ? 2.5 : 0.0, kText_mm);
    EXPECT_NEAR(laps[i].curve.sweep_rad, (i % 2 == 0 ? -2 : 2) * kPi, 1e-6);
  }
}

TEST(Entry, HelixSinksOneStepdownALapAndEndsWithALevelLap) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 2.5\nentry = \"helix\""));
  int laps = 0;
  for (const Move &move : feed_moves(plan.program))
    if (!move.curve.is_line()) {
      EXPECT_NEAR(move.curve.begin.z - move.curve.end.z, laps < 4 ? 2.5 : 0.0, kText_mm);
      EXPECT_NEAR(move.curve.sweep_rad, -2 * kPi, 1e-6) << "climb outside: clockwise";
      ++laps;
    }
  EXPECT_EQ(laps, 5);
}

Vec2 direction_at(const Curve &curve, double u) { return glm::normalize(plan(curve.velocity(u))); }

void expect_arcs_fit(const std::string &surface, double path_mm) {
  const auto plan = planned(wall_pass(
      surface, "stepdown_mm = 10\nentry = \"arc\"\nlead_radius_mm = 2.5\nlead_deg = 80\noverlap_mm = 6"));
  LargeArray<Move> cuts = level_moves(plan.program, -10.0);
  ASSERT_GE(cuts.size(), 3u);
  const Curve &in = cuts.front().curve, &out = cuts.back().curve;
  EXPECT_NEAR(in.radius_mm, 2.5, 1e-5);
  EXPECT_NEAR(out.radius_mm, 2.5, 1e-5);
  EXPECT_NEAR(std::abs(in.sweep_rad), rad_from_deg(80), 1e-5);
  // Tangent: no kink where the arc meets the path, in and out.
  EXPECT_NEAR(glm::dot(direction_at(in, 1.0), direction_at(cuts[1].curve, 0.0)), 1.0, 1e-9);
  EXPECT_NEAR(glm::dot(direction_at(cuts[cuts.size() - 2].curve, 1.0), direction_at(out, 0.0)), 1.0, 1e-9);
  double between_mm = 0.0;
  for (std::size_t i = 1; i + 1 < cuts.size(); ++i)
    between_mm += cuts[i].curve.length_mm();
  EXPECT_NEAR(between_mm, path_mm + 6.0, 1e-4) << "one lap and the overlap";
}

TEST(Entry, LeadArcsAreTangentAndOverlapIsCutTwiceOutside) { expect_arcs_fit("rim", kPath_mm); }
TEST(Entry, LeadArcsAreTangentAndOverlapIsCutTwiceInside) { expect_arcs_fit("bore", 2 * kPi * 7.0); }

TEST(Entry, StartStandsAtItsAngle) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 3\nentry = \"plunge\"\nstart_deg = 130"));
  for (const Move &move : plunges(plan.program))
    EXPECT_NEAR(angle_deg(move.curve.end), 130.0, 1e-4);
}

TEST(Entry, StartIsSteppedRoundLevelByLevel) {
  const auto plan =
      planned(wall_pass("rim", "stepdown_mm = 3\nentry = \"plunge\"\nstart_deg = 10\nstart_step_deg = 25"));
  const auto down = plunges(plan.program);
  ASSERT_EQ(down.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(angle_deg(down[i].curve.end), 10.0 + 25.0 * static_cast<double>(i), 1e-4);
}

TEST(Entry, StartMayBeALengthOnTheWall) {
  // A quarter of the rim's own length: 90 degrees.
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 10\nentry = \"plunge\"\nstart_mm = 31.4159265"));
  EXPECT_NEAR(angle_deg(plunges(plan.program).at(0).curve.end), 90.0, 1e-4);
}

TEST(Entry, ApproachComesDownBesideTheStart) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 10\nentry = \"plunge\"\napproach_mm = 6.0"));
  const Move *last_rapid = nullptr;
  for (const Move &move : plan.program.moves) {
    if (move.kind == MoveKind::feed)
      break;
    last_rapid = &move;
  }
  ASSERT_NE(last_rapid, nullptr);
  EXPECT_NEAR(
      glm::distance(plan.program.moves.empty() ? Vec2(0) : asperity::plan(last_rapid->curve.end), kMiddle),
      29.0, 1e-5);
  EXPECT_NEAR(last_rapid->curve.end.z, 2.4, kText_mm) << "2 mm above the blank's 10.4";
}

} // namespace
} // namespace asperity::test
