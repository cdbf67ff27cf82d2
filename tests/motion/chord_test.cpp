// Checks paths cut into many short straight moves: the plan must be that of the curve they stand for.
#include "program_builder.h"

#include "asperity/base/units.h"
#include "asperity/motion/corner.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

/// A circle about zero run as equal chords, with a straight way in and out along its tangent.
ProgramBuilder chord_circle(double radius_mm, int chords, double feed_mm_per_min) {
  ProgramBuilder builder({radius_mm, -40, 0});
  builder.feed_to({radius_mm, 0, 0}, feed_mm_per_min);
  for (int i = 1; i <= chords; ++i) {
    const double a = 2 * kPi * i / chords;
    builder.feed_to({radius_mm * std::cos(a), radius_mm * std::sin(a), 0}, feed_mm_per_min);
  }
  builder.feed_to({radius_mm, 40, 0}, feed_mm_per_min);
  return builder;
}

TEST(Chord, LineCutIntoAThousandTakesTheSameTime) {
  for (const Vec3 end : {Vec3(30, 0, 0), Vec3(7, -11, 3), Vec3(0.3, 0.1, 0)}) {
    ProgramBuilder one, many;
    one.feed_to(end, 2400);
    for (int i = 1; i <= 1000; ++i)
      many.feed_to(end * (i / 1000.0), 2400);
    const TimedPath a = plan(one, Machine{}), b = plan(many, Machine{});
    EXPECT_NEAR(b.duration_s / a.duration_s, 1.0, 1e-9);
    double peak = 0;
    for (const PathPiece &piece : b.pieces)
      peak = std::max(peak, piece.v_peak_mm_per_s);
    EXPECT_NEAR(peak, a.pieces[0].v_peak_mm_per_s, 1e-9);
  }
}

TEST(Chord, ArcCutIntoAThousandTakesTheSameTime) {
  ProgramBuilder one({5, 0, 0}), many({5, 0, 0});
  one.arc({0, 0}, 3.0, 6000, 2.0);
  for (int i = 0; i < 1000; ++i)
    many.arc({0, 0}, 3.0 / 1000, 6000, 2.0 / 1000);
  EXPECT_NEAR(plan(many, even_machine(400)).duration_s / plan(one, even_machine(400)).duration_s, 1.0, 1e-9);
}

// derived: the arc that takes half of two chords is the circle inscribed in the polygon, of radius r cos(half
// turn). Every corner alike and the feed never reached: the speed settles between the corner's and the
// mid-chord peak v^2 = a r cos + a d.
TEST(Chord, FineCircleRunsAtItsCentripetalSpeed) {
  const double radius = 2, a = 400;
  for (const int chords : {90, 720, 5760}) {
    const TimedPath path = plan(chord_circle(radius, chords, 6000), even_machine(a));
    const double inscribed = radius * std::cos(kPi / chords), chord = 2 * radius * std::sin(kPi / chords);
    ASSERT_LT(radius - inscribed,
              0.02); // sag within the corner deviation, so that the short-leg rule decides
    // A machine of even axes gives a slanted chord up to sqrt 2 of an axis's acceleration, an axis-parallel
    // one 1.
    double slowest = 1e9, fastest = 0;
    for (std::size_t i = 2; i + 2 < path.pieces.size(); ++i) {
      slowest = std::min(slowest, path.pieces[i].v_in_mm_per_s);
      fastest = std::max(fastest, path.pieces[i].v_peak_mm_per_s);
    }
    EXPECT_GE(slowest, std::sqrt(a * inscribed) * (1 - 1e-9));
    EXPECT_LE(fastest, std::sqrt(a * std::sqrt(2.0) * (inscribed + chord)) * (1 + 1e-9));
  }
}

TEST(Chord, FineCircleIsNotSlowerThanAtAnyReachableFeed) {
  // 3 m/min needs 50^2/400 = 6.25 mm of radius; at 10 mm nothing but the begin and the end may slow the path.
  const TimedPath path = plan(chord_circle(10, 3600, 3000), even_machine(400));
  for (std::size_t i = 1; i + 1 < path.pieces.size(); ++i)
    EXPECT_NEAR(path.pieces[i].v_in_mm_per_s, 50, 1e-9);
}

// Without the short-leg rule the deviation alone would let fine chords through far above the circle's own
// limit.
TEST(Chord, DeviationAloneWouldOverrunAFineCircle) {
  const double turn = 2 * kPi / 5760;
  EXPECT_GT(corner_speed_mm_per_s(400, 0.02, turn), 100 * std::sqrt(400 * 2.0));
}

// derived: with sag e = r - r cos(half turn) above the deviation, r_corner = deviation/(1/cos - 1), slower
// than the circle by about sqrt(deviation/e): coarse chords do slow real controllers.
TEST(Chord, CoarseCircleIsSlowedByItsCorners) {
  const double radius = 20, a = 400, deviation = 0.02, half = kPi / 36;
  const TimedPath path = plan(chord_circle(radius, 36, 60000), even_machine(a, deviation));
  const double corner = std::sqrt(a * deviation / (1 / std::cos(half) - 1));
  // Chords 8 and 9 meet at 90 deg of the circle, both 5 deg off the x axis: acceleration a / cos 5 deg.
  EXPECT_NEAR(path.pieces[10].v_in_mm_per_s, corner / std::sqrt(std::cos(half)), 1e-9);
  EXPECT_LT(corner, 0.6 * std::sqrt(a * radius));
}

} // namespace
} // namespace asperity
