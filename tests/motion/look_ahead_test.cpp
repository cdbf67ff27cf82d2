// Checks the speed plan of whole programs: worked corners, closed forms on a line, and laws every plan must
// obey.
#include "program_builder.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <random>

namespace asperity {
namespace {

constexpr double kRounding = 1e-11;

// Worked example, derived from the junction rule of controller documentation: at 400 mm/s2 and 0.02 mm, F1200
// falls to 264 mm/min at a square corner, to 22 % of the chip load, over 0.48 mm on each side.
TEST(LookAhead, FeedFallsToFifthAtASquareCorner) {
  const TimedPath path =
      plan(ProgramBuilder().feed_to({50, 0, 0}, 1200).feed_to({50, 50, 0}, 1200), even_machine(400, 0.02));
  const PathPiece &in = path.pieces[0], &out = path.pieces[1];
  EXPECT_NEAR(mm_per_min_from_mm_per_s(in.v_out_mm_per_s), 264, 0.5); // printed to 1 mm/min
  EXPECT_NEAR(in.v_out_mm_per_s / 20, 0.22, 0.005);                   // printed to 1 %
  const double slow_mm = (20.0 * 20 - in.v_out_mm_per_s * in.v_out_mm_per_s) / 800;
  EXPECT_NEAR(slow_mm, 0.48, 0.005); // printed to 0.01 mm
  EXPECT_NEAR(in.speed_at(50 - slow_mm), 20, 1e-6);
  EXPECT_LT(in.speed_at(50 - 0.9 * slow_mm), 19.9);
  EXPECT_NEAR(out.speed_at(slow_mm), 20, 1e-6);
  EXPECT_LT(out.speed_at(0.9 * slow_mm), 19.9);
}

TEST(LookAhead, CornerUsesTheWeakerAxisAndNeverPassesEitherFeed) {
  Machine machine = even_machine(400, 0.02);
  machine.acceleration_mm_per_s2.z = 100;
  const TimedPath plunge =
      plan(ProgramBuilder().feed_to({50, 0, 0}, 1200).feed_to({50, 0, -50}, 1200), machine);
  EXPECT_NEAR(plunge.pieces[0].v_out_mm_per_s, std::sqrt(100 * 0.02 * (1 + std::sqrt(2.0))), kRounding);
  const TimedPath slower = plan(ProgramBuilder().feed_to({50, 0, 0}, 1200).feed_to({99, 1, 0}, 300), machine);
  EXPECT_NEAR(slower.pieces[0].v_out_mm_per_s, 5, kRounding);
  const TimedPath arrival = plan(ProgramBuilder().rapid_to({50, 0, 0}).feed_to({99, 1, 0}, 300), machine);
  EXPECT_NEAR(arrival.pieces[0].v_out_mm_per_s, 5, kRounding);
}

// Textbook: v^2 = a d + (v1^2 + v2^2)/2 where a piece never reaches its feed.
TEST(LookAhead, ShortPieceBetweenCornersPeaksByItsClosedForm) {
  const Machine machine = even_machine(400, 0.02);
  const TimedPath path =
      plan(ProgramBuilder().feed_to({50, 0, 0}, 1200).feed_to({50, 0.3, 0}, 1200).feed_to({0, 0.3, 0}, 1200),
           machine);
  const double corner2 = 400 * 0.02 * (1 + std::sqrt(2.0));
  EXPECT_NEAR(path.pieces[1].v_peak_mm_per_s, std::sqrt(400 * 0.3 + corner2), kRounding);
}

// derived: on a straight line with one acceleration the fastest admissible speed at a joint is the least over
// all joints of sqrt(limit^2 + 2 a distance), worked out here joint against joint.
TEST(LookAhead, StraightLineOfChangingFeedsReachesTheFastestAdmissiblePlan) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> step(0.02, 2.0), feed(200, 4000);
  const int count = 300;
  std::vector<double> place{0.0}, limit{0.0}, feeds;
  ProgramBuilder builder;
  for (int i = 0; i < count; ++i) {
    place.push_back(place.back() + step(random));
    feeds.push_back(feed(random));
    builder.feed_to({place.back(), 0, 0}, feeds.back());
  }
  for (int i = 1; i < count; ++i)
    limit.push_back(std::min(feeds[std::size_t(i) - 1], feeds[std::size_t(i)]) / 60);
  limit.push_back(0.0);
  const TimedPath path = plan(builder, even_machine(250));
  for (std::size_t i = 0; i < path.pieces.size(); ++i) {
    double fastest = 1e9;
    for (std::size_t j = 0; j < limit.size(); ++j)
      fastest = std::min(fastest, std::sqrt(limit[j] * limit[j] + 2 * 250 * std::abs(place[i] - place[j])));
    EXPECT_NEAR(path.pieces[i].v_in_mm_per_s, fastest, 1e-9); // 300 steps of rounding
  }
}

/// A restless program: lines and arcs of all sizes and turns, rapids, stops and dwells.
ProgramBuilder restless_program(int moves) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> along(-8, 8), share(0, 1);
  ProgramBuilder builder;
  Vec2 at(0.0);
  for (int i = 0; i < moves; ++i) {
    const double pick = share(random), scale = std::pow(10.0, -3 * share(random));
    if (pick < 0.1)
      builder.exact_stop();
    else
      builder.exact_path();
    const Vec2 step = scale * Vec2(along(random), along(random));
    if (pick < 0.7)
      builder.feed_to({at.x + step.x, at.y + step.y, -share(random)}, 300 + 4000 * share(random));
    else if (pick < 0.85)
      builder.arc(at + step, along(random) / 2, 300 + 4000 * share(random), scale * along(random) / 4);
    else if (pick < 0.97)
      builder.rapid_to({at.x + step.x, at.y + step.y, 5});
    else
      builder.dwell(share(random));
    at = plan(builder.program().moves.back().curve.end);
  }
  return builder;
}

TEST(LookAhead, EveryPlanKeepsItsLaws) {
  const ProgramBuilder builder = restless_program(5000);
  Machine machine; // the shipped axis limits, all different enough
  const TimedPath path = plan(builder, machine);
  ASSERT_GT(path.pieces.size(), 4900u);
  double time = 0;
  for (std::size_t i = 0; i < path.pieces.size(); ++i) {
    const PathPiece &p = path.pieces[i];
    // One speed at every joint, and never above the programmed feed.
    EXPECT_EQ(p.v_out_mm_per_s, i + 1 < path.pieces.size() ? path.pieces[i + 1].v_in_mm_per_s : 0.0);
    EXPECT_LE(std::max({p.v_in_mm_per_s, p.v_peak_mm_per_s, p.v_out_mm_per_s}),
              p.feed_mm_per_s * (1 + kRounding));
    EXPECT_LE(std::max(p.v_in_mm_per_s, p.v_out_mm_per_s), p.v_peak_mm_per_s);
    // Both ramps fit into the piece: |dv^2| <= 2 a d.
    const double peak2 = p.v_peak_mm_per_s * p.v_peak_mm_per_s;
    const double ramps =
        (2 * peak2 - p.v_in_mm_per_s * p.v_in_mm_per_s - p.v_out_mm_per_s * p.v_out_mm_per_s);
    EXPECT_LE(ramps, 2 * p.acceleration_mm_per_s2 * p.length_mm + kRounding * peak2);
    EXPECT_EQ(p.start_s, time);
    time += p.duration_s;
    EXPECT_TRUE(std::isfinite(p.duration_s));
  }
  EXPECT_EQ(path.duration_s, time);
}

TEST(LookAhead, NoAxisPassesItsLimitsAlongStraightPieces) {
  const Machine machine;
  for (const PathPiece &p : plan(restless_program(5000), machine).pieces) {
    if (!p.curve.is_line() || p.kind == MoveKind::dwell)
      continue;
    const Vec3 way = (p.curve.end - p.curve.begin) / p.length_mm;
    for (int axis = 0; axis < 3; ++axis) {
      EXPECT_LE(std::abs(way[axis]) * p.acceleration_mm_per_s2,
                machine.acceleration_mm_per_s2[axis] * (1 + kRounding));
      EXPECT_LE(std::abs(way[axis]) * p.v_peak_mm_per_s * 60,
                machine.max_feed_mm_per_min[axis] * (1 + kRounding));
    }
  }
}

TEST(LookAhead, SameWayBackTakesTheSameSpeeds) {
  const Vec3 points[] = {{0, 0, 0},  {12, 0, 0},     {12, 0.4, 0}, {13, 7, -1},
                         {2, 9, -1}, {2.2, 9.1, -1}, {30, 9, 0}};
  const double feeds[] = {900, 2000, 1500, 400, 1200, 3000};
  ProgramBuilder there(points[0]), back(points[6]);
  for (int i = 1; i < 7; ++i)
    there.feed_to(points[i], feeds[i - 1]);
  for (int i = 5; i >= 0; --i)
    back.feed_to(points[i], feeds[i]);
  const TimedPath a = plan(there, Machine{}), b = plan(back, Machine{});
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_NEAR(a.pieces[i].v_in_mm_per_s, b.pieces[5 - i].v_out_mm_per_s, kRounding);
    EXPECT_NEAR(a.pieces[i].v_peak_mm_per_s, b.pieces[5 - i].v_peak_mm_per_s, kRounding);
    EXPECT_NEAR(a.pieces[i].duration_s, b.pieces[5 - i].duration_s, kRounding);
  }
}

} // namespace
} // namespace asperity
